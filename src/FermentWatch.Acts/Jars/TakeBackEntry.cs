using FermentWatch.Acts.Rounds;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>
/// Takes back what was entered; a jar that went into the cold by it stands where it stood before, one that ended is kept again. A child
/// takes back its own looks and sightings.
/// </summary>
[OpenToChildren, OpenToRecorders]
public sealed class TakeBackEntry(IJarBook jars, TakeBackMove moves, IForecastRenewal renewal, TimeProvider clock)
{
    /// <summary>Moves of former versions bear an id of their own and came a moment after the change of stage.</summary>
    private static readonly Duration Moment = Duration.FromSeconds(30);

    /// <summary>Null where it was taken back, else why not.</summary>
    public async Task<Refusal?> DoAsync(Jar jar, Guid observation, EntryMark mark, CancellationToken cancellationToken)
    {
        if (jar.Observations.Find(each => each.Id == observation) is not { } entry)
            return new Refusal("entry", "one of another jar", "an entry of this jar would be right");
        if (ChildRules.TakingBack(mark.Role, mark.Who, entry) is { } refusal)
            return refusal;
        if (await jars.CorrectAsync(observation, clock.GetUtcNow().ToInstant(), mark.By, null, cancellationToken)
            && jar.Placements.OrderBy(each => each.From).Skip(1).FirstOrDefault(each => GoesWith(entry, each)) is { } move)
            await moves.TakeBackAsync(jar, move, mark, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return null;
    }

    /// <summary>Whether a move was made by a change of stage.</summary>
    private static bool GoesWith(Observation entry, JarPlacement placement) => entry is StageChange { Stage: JarStage.Cold }
        && (placement.Id == ChangeStage.MoveOf(entry, placement.PlaceId).Id || (placement.From > entry.At && placement.From - entry.At < Moment));
}

/// <summary>Takes back a move that was none: the jar stands where it stood before.</summary>
[OpenToRecorders]
public sealed class TakeBackMove(IJarBook jars, IPlaceBook places, IForecastRenewal renewal, TimeProvider clock)
{
    /// <summary>False if it is not of this jar, is its first place, or was taken back before.</summary>
    public async Task<bool> DoAsync(Jar jar, Guid placement, EntryMark mark, CancellationToken cancellationToken)
    {
        if (ChildRules.Correcting(mark.Role) is not null
            || jar.Placements.OrderBy(each => each.From).Skip(1).FirstOrDefault(each => each.Id == placement) is not { } move)
            return false;
        bool taken = await TakeBackAsync(jar, move, mark, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return taken;
    }

    /// <summary>The same as part of another act, which has the forecast renewed.</summary>
    internal async Task<bool> TakeBackAsync(Jar jar, JarPlacement move, EntryMark mark, CancellationToken cancellationToken)
    {
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        string Name(Guid place) => known.First(each => each.Id == place).Name;
        JarPlacement before = jar.Placements.Where(each => each.Id != move.Id && each.From <= move.From).MaxBy(each => each.From)!;
        var correction = new JarCorrection
        {
            Id = Guid.CreateVersion7(clock.GetUtcNow()), JarId = jar.Id, Field = "place", Before = Name(move.PlaceId), After = Name(before.PlaceId),
            Since = move.From, EnteredAt = clock.GetUtcNow().ToInstant(), By = mark.By,
        };
        return await jars.TakeBackMoveAsync(move.Id, correction, cancellationToken);
    }
}
