using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Takes back a move that was none: the jar stands where it stood before.</summary>
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
