using System.Globalization;
using System.Security.Claims;
using FermentWatch.Acts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;

namespace FermentWatch.Web.Accounts;

/// <summary>Who signed in, as the acts know a person.</summary>
public static class PersonRoles
{
    /// <summary>Says of a request how many seconds its form lay before it was sent.</summary>
    public const string KeptClaim = "kept-seconds";

    /// <summary>Whoever is not said to be an adult is none.</summary>
    public static MemberRole Role(this ClaimsPrincipal person) =>
        person.IsInRole(nameof(MemberRole.Adult)) && !person.IsInRole(nameof(MemberRole.Child)) ? MemberRole.Adult : MemberRole.Child;

    /// <summary>Who this is, to sign what is entered or made.</summary>
    public static Person Known(this ClaimsPrincipal person) =>
        new(person.Identity!.Name!, Guid.TryParse(person.FindFirstValue(ClaimTypes.NameIdentifier), out Guid account) ? account : null);

    /// <summary>The mark under which a person who signed in enters something.</summary>
    public static EntryMark Mark(this ClaimsPrincipal person, Guid id, Again again = Again.NotSaid) =>
        new(id, person.Known(), person.Role(), again)
        {
            KeptFor = double.TryParse(person.FindFirstValue(KeptClaim), CultureInfo.InvariantCulture, out double seconds)
                ? Duration.FromSeconds(seconds)
                : Duration.Zero,
        };
}
