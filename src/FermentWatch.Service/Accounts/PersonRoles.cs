using System.Security.Claims;
using FermentWatch.Kitchen.Members;

namespace FermentWatch.Service.Accounts;

/// <summary>The role of who signed in.</summary>
public static class PersonRoles
{
    /// <summary>An account without a role is an adult's: the owner's, made at first start.</summary>
    public static MemberRole Role(this ClaimsPrincipal person) => person.IsInRole(nameof(MemberRole.Child)) ? MemberRole.Child : MemberRole.Adult;
}
