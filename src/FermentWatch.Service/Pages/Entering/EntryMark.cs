namespace FermentWatch.Service.Pages.Entering;

/// <summary>Under which id something is entered, and by whom. A form carries its id, so that a double tap counts once.</summary>
/// <param name="Id">Made when the form was shown, or by the caller of the API.</param>
/// <param name="By">The name the household uses.</param>
public sealed record EntryMark(Guid Id, string By);
