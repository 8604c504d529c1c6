using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Acts;

/// <summary>Under which id something is entered, and by whom. A form carries its id, so that a double tap counts once.</summary>
/// <param name="Id">Made when the form was shown, or by the caller of the API.</param>
/// <param name="By">The name the household uses.</param>
/// <param name="Role">What this person may do.</param>
/// <param name="Again">What is said of a form that was sent before with other content.</param>
public sealed record EntryMark(Guid Id, string By, MemberRole Role, Again Again = Again.NotSaid);
