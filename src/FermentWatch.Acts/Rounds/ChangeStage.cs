using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Acts.Rounds;

/// <summary>Into the cold, finished or thrown out; into the cold also names the place.</summary>
[OpenToRecorders]
public sealed class ChangeStage(RoundFiling filing, IJarBook jars, IPlaceBook places, IForecastRenewal renewal)
{
    /// <summary>What became of it.</summary>
    /// <param name="number">Number of the jar.</param>
    /// <param name="stage">Where it goes.</param>
    /// <param name="why">A few words; needed for throwing out.</param>
    /// <param name="coldPlace">The place of a jar that goes into the cold; null for the first cold store there is.</param>
    /// <param name="mark">Identity of the answer and who gives it.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public Task<AnswerOutcome> DoAsync(int number, JarStage stage, string? why, Guid? coldPlace, EntryMark mark,
        CancellationToken cancellationToken) => DoAsync(number, new WhereItGoes(stage, null, null), why, coldPlace, mark, cancellationToken);

    /// <summary>The same, with where a finished jar went.</summary>
    public async Task<AnswerOutcome> DoAsync(int number, WhereItGoes goes, string? why, Guid? coldPlace, EntryMark mark,
        CancellationToken cancellationToken)
    {
        if (ChildRules.Moving(mark.Role) is { } refusal)
            return new AnswerOutcome([], [], [refusal]);
        AnswerOutcome outcome = await filing.OneAsync(number, mark,
            (answering, jar) => answering.Moved(jar, goes.Stage, why, goes.Went, goes.GivenTo), cancellationToken);
        if (goes.Stage != JarStage.Cold || outcome.Observations is not [var change])
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

/// <summary>Where a jar goes.</summary>
/// <param name="Stage">What it comes to.</param>
/// <param name="Went">Where a finished jar went; null where nobody says.</param>
/// <param name="GivenTo">To whom it was given; null where it was not, or nobody says.</param>
public sealed record WhereItGoes(JarStage Stage, Destination? Went, string? GivenTo);
