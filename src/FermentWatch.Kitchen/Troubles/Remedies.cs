using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Troubles;

/// <summary>What settles which small trouble. Mould, slime and an off smell are settled by nothing that is done. This project's own rules.</summary>
public static class Remedies
{
    /// <summary>What settles a sighting of this kind, followed by well looks; null where nothing does.</summary>
    public static HandlingKind? Of(SightingKind kind) => kind switch
    {
        SightingKind.PiecesUp => HandlingKind.PressedUnder,
        SightingKind.Film => HandlingKind.Skimmed,
        SightingKind.BrineLow => HandlingKind.BrineToppedUp,
        SightingKind.Gas => HandlingKind.GasLetOut,
        _ => null,
    };

    /// <summary>What was done about a sighting after it was seen; null where nothing was.</summary>
    public static Handling? Done(Jar jar, Sighting seen) => Of(seen.Kind) is { } remedy
        ? jar.Standing.OfType<Handling>().FirstOrDefault(done => done.Kind == remedy && done.At >= seen.At)
        : null;

    /// <summary>
    /// What was done, where the forecast stands on that alone: no pH was measured since the trouble, so its spread is wider. The
    /// latest; null where there is none.
    /// </summary>
    public static Handling? Widening(Jar jar)
    {
        var measured = jar.Standing.OfType<PhMeasurement>().LastOrDefault()?.At;
        return jar.Standing.OfType<Sighting>().Where(seen => Trouble.WithdrawsForecast(seen.Kind) && !(measured > seen.At))
            .Select(seen => Done(jar, seen)).OfType<Handling>().MaxBy(done => done.At);
    }
}
