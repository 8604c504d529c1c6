using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

/// <summary>A round.</summary>
/// <param name="Date">The date on the household's calendar.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Text">Its message.</param>
/// <param name="Jars">What each jar needs.</param>
public sealed record RoundAnswer(LocalDate Date, string Title, string Text, IReadOnlyList<RoundJarAnswer> Jars)
{
    public static RoundAnswer Of(RoundSheet sheet) => new(sheet.Date, RoundWords.Title(sheet), RoundWords.Body(sheet),
        [.. sheet.Shelves.SelectMany(shelf => shelf.Jars.Select(each => RoundJarAnswer.Of(each, shelf.Place)))]);
}
