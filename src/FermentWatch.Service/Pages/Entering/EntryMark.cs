using System.Security.Claims;
using FermentWatch.Kitchen.Members;
using FermentWatch.Service.Accounts;

namespace FermentWatch.Service.Pages.Entering;

/// <summary>Under which id something is entered, and by whom. A form carries its id, so that a double tap counts once.</summary>
/// <param name="Id">Made when the form was shown, or by the caller of the API.</param>
/// <param name="By">The name the household uses.</param>
/// <param name="Role">What this person may do.</param>
public sealed record EntryMark(Guid Id, string By, MemberRole Role)
{
    /// <summary>The mark of a person who signed in.</summary>
    public static EntryMark Of(Guid id, ClaimsPrincipal person) => new(id, person.Identity!.Name!, person.Role());
}
