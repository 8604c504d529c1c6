using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

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

/// <summary>One jar of a round.</summary>
/// <param name="Number">The number on its strip of tape.</param>
/// <param name="PlaceId">The shelf.</param>
/// <param name="Place">Its name.</param>
/// <param name="Day">Days after packing, 0 on the date of packing.</param>
/// <param name="LookFors">What to look for and do.</param>
/// <param name="Opening">Whether it has to be opened.</param>
/// <param name="LookedAtToday">Whether somebody has answered for it.</param>
/// <param name="DaysNotLookedAt">Whole dates before this one on which nobody did.</param>
/// <param name="NextStep">The one thing to do with it, the same as on its page.</param>
public sealed record RoundJarAnswer(
    int Number, Guid PlaceId, string Place, int Day, IReadOnlyList<LookFor> LookFors, bool Opening, bool LookedAtToday, int DaysNotLookedAt,
        string NextStep)
{
    public static RoundJarAnswer Of(RoundJar each, Place place) => new(
        each.Jar.Number, place.Id, place.Name, each.Day, each.LookFors, each.Opening, each.LookedAtToday, each.DaysNotLookedAt, each.Step.Text);
}

/// <summary>What became of an answer.</summary>
/// <param name="Filed">How many observations were filed.</param>
/// <param name="Known">What somebody had said before, in one line each.</param>
/// <param name="AskedAgainAt">When it is asked again, where it was put off.</param>
public sealed record AnswerTaken(int Filed, IReadOnlyList<string> Known, string? AskedAgainAt = null);
