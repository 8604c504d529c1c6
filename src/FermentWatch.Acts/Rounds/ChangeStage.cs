using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Acts.Rounds;

/// <summary>Into the cold, finished or thrown out; into the cold also names the place.</summary>
public sealed class ChangeStage(RoundFiling filing, IJarBook jars, IPlaceBook places, IForecastRenewal renewal)
{
    /// <summary>What became of it.</summary>
    /// <param name="number">Number of the jar.</param>
    /// <param name="stage">Where it goes.</param>
    /// <param name="why">A few words; needed for throwing out.</param>
    /// <param name="coldPlace">The place of a jar that goes into the cold; null for the first cold store there is.</param>
    /// <param name="mark">Identity of the answer and who gives it.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<AnswerOutcome> DoAsync(int number, JarStage stage, string? why, Guid? coldPlace, EntryMark mark,
        CancellationToken cancellationToken)
    {
        if (ChildRules.Moving(mark.Role) is { } refusal)
            return new AnswerOutcome([], [], [refusal]);
        AnswerOutcome outcome = await filing.OneAsync(number, mark, (answering, jar) => answering.Moved(jar, stage, why), cancellationToken);
        if (stage != JarStage.Cold || outcome.Observations is not [var change])
            return outcome;
        if ((coldPlace ?? (await places.AllAsync(cancellationToken)).FirstOrDefault(each =>
            each.Typical == TypicalTemperature.ColdStore)?.Id) is { } cold)
            await jars.MoveAsync(MoveOf(change, cold), cancellationToken);
        await renewal.RunAsync(number, cancellationToken);
        return outcome;
    }

    /// <summary>The move that goes with a change of stage; its id is made of the change's, so that it can be taken back with it.</summary>
    public static JarPlacement MoveOf(Observation change, Guid place) =>
        new() { Id = AnswerId.Of(change.Id, place), JarId = change.JarId, PlaceId = place, From = change.At };
}
