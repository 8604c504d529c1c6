using System.Security.Claims;
using FermentWatch.Kitchen.Members;

namespace FermentWatch.Service.Accounts;

/// <summary>The role of who signed in.</summary>
public static class PersonRoles
{
    /// <summary>Whoever is not said to be an adult is none.</summary>
    public static MemberRole Role(this ClaimsPrincipal person) => person.IsInRole(nameof(MemberRole.Adult)) && !person.IsInRole(nameof(MemberRole.Child)) ? MemberRole.Adult : MemberRole.Child;
}
