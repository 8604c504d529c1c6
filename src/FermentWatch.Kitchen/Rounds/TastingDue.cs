using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>From when on a jar is tasted, and from when on that is a decision. This project's own rules.</summary>
public static class TastingDue
{
    private const int ShortestDays = 7;

    /// <summary>Whether tasting is a question: no trouble keeps it back.</summary>
    public static bool IsOpen(Jar jar, DateTimeZone zone) => Trouble.Of(jar, zone) is { ForecastWithdrawn: false, CloserWatch: false };

    /// <summary>Whether somebody decided to leave it past its tasting days.</summary>
    public static bool IsLeft(Jar jar) => jar.Standing.OfType<Handling>().Any(each => each.Kind == HandlingKind.LeftStanding);

    /// <summary>
    /// The first date, past or to come: as expected, and after a taste within a week where it said not yet, within three days where it said
    /// nearly; null once a taste of its lot said right or past it.
    /// </summary>
    /// <param name="jar">The jar that is tasted.</param>
    /// <param name="forecast">Its forecast; null where nothing is forecast of it.</param>
    /// <param name="tastes">Tastes of its lot, by time.</param>
    /// <param name="zone">The household's zone.</param>
    public static LocalDate? From(Jar jar, JarForecast? forecast, IReadOnlyList<Taste> tastes, DateTimeZone zone)
    {
        AcidLineState line = AcidLine.Report(jar, zone).State;
        LocalDate expected = Tasting.From(jar, forecast, zone, line);
        if (tastes.Count == 0)
            return expected;
        LocalDate tasted = tastes[^1].At.InZone(zone).Date;
        return tastes[^1].Verdict switch
        {
            TasteVerdict.Right or TasteVerdict.PastIt => null,
            TasteVerdict.Nearly => Again(1, 3),
            _ => Again(2, 7),
        };

        // What was tasted once is not left for longer, whatever is expected: half of such jars would be right before that day.
        LocalDate Again(int fewestDays, int mostDays) => LocalDate.Max(Tasting.NotBefore(jar, forecast, zone, line),
            LocalDate.Max(tasted.PlusDays(fewestDays), LocalDate.Min(expected, tasted.PlusDays(mostDays))));
    }

    /// <summary>The date on which nine in ten would be sour enough, and a week after the first at the earliest; null where that is beyond the
    /// forecast.</summary>
    public static LocalDate? PastFrom(Jar jar, JarForecast? forecast, IReadOnlyList<Taste> tastes, DateTimeZone zone) =>
        forecast?.Forecast.Target?.P90 is { } late && From(jar, forecast, tastes, zone) is { } from
            ? LocalDate.Max(forecast.At(late).InZone(zone).Date.PlusDays(1), from.PlusDays(ShortestDays)) : null;
}

/// <summary>What tasting comes to for a jar: it stands for its lot, or another of the lot stands for it.</summary>
/// <param name="By">Number of the jar that is tasted for the lot.</param>
/// <param name="Lot">Numbers of the jars it stands for, itself among them.</param>
/// <param name="From">The first date worth tasting; null where tasting is over for the lot: right, past it, or decided.</param>
/// <param name="PastFrom">The date from which it is a decision rather than a taste; null where that is not known.</param>
/// <param name="SaidRight">Whether the last taste of the lot said right or past it.</param>
/// <param name="Kind">What is asked on the date in question.</param>
public sealed record TasteAsk(int By, IReadOnlyList<int> Lot, LocalDate? From, LocalDate? PastFrom, bool SaidRight, TasteAskKind Kind)
{
    /// <summary>Numbers of the jars that need no tasting, since it stands for them.</summary>
    public IReadOnlyList<int> Others { get; } = [.. Lot.Where(number => number != By)];

    /// <summary>Whether its tasting days are over on a date, by expectation.</summary>
    public bool IsPast(LocalDate date) => PastFrom <= date;
}

/// <summary>What is asked about tasting on one date.</summary>
public enum TasteAskKind
{
    Nothing = 0,

    /// <summary>Taste it.</summary>
    Taste = 1,

    /// <summary>Its tasting days are over, asked this once: into the cold, eat it, or leave it.</summary>
    Decide = 2,
}
