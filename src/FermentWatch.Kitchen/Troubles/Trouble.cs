using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Troubles;

/// <summary>What a sighting does to a jar's forecast and to how closely it is watched. This project's own rules.</summary>
public static class Trouble
{
    /// <summary>Days on which all was well after which the closer watch ends.</summary>
    private const int WellDaysThatEndTheWatch = 3;

    /// <summary>Gas is what a working jar makes; everything else is trouble.</summary>
    public static bool IsTrouble(SightingKind kind) => kind != SightingKind.Gas;

    /// <summary>Whether the forecast is withdrawn until a pH is measured: the acid may have been eaten or was never made evenly.</summary>
    public static bool WithdrawsForecast(SightingKind kind) => kind is SightingKind.PiecesUp or SightingKind.Film
        or SightingKind.FuzzOrUnsure or SightingKind.BrineLow or SightingKind.Slime or SightingKind.OffSmell;

    /// <summary>What the standing observations of a jar mean at present.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="zone">The household's zone, in which days are told apart.</param>
    public static TroubleState Of(Jar jar, DateTimeZone zone)
    {
        var standing = jar.Standing.ToList();
        Sighting? last = standing.OfType<Sighting>().LastOrDefault(sighting => IsTrouble(sighting.Kind));
        if (last is null)
            return new TroubleState(null, false, false);
        Instant? measured = standing.OfType<PhMeasurement>().LastOrDefault()?.At;
        bool withdrawn = standing.OfType<Sighting>().Any(sighting => WithdrawsForecast(sighting.Kind) && !(measured > sighting.At));
        int wellDays = standing.OfType<Look>().Where(look => look.At > last.At).Select(look => look.At.InZone(zone).Date).Distinct().Count();
        return new TroubleState(last, withdrawn, wellDays < WellDaysThatEndTheWatch);
    }
}
