using System.Globalization;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;
using static FermentWatch.Kinetics.Sentence;

namespace FermentWatch.Kitchen.Words;

/// <summary>What a jar that ended was like: what happened, never what was expected.</summary>
public static class PastWords
{
    /// <summary>How it ended, after how long, and what was last tasted and measured.</summary>
    public static string Of(Jar jar, DateTimeZone zone)
    {
        StageChange? end = jar.Standing.OfType<StageChange>().LastOrDefault();
        if (end is null)
            return "";
        int days = Period.DaysBetween(jar.PackedAt.InZone(zone).Date, end.At.InZone(zone).Date);
        string why = end.Note is null ? "" : $": {end.Note}";
        var words = new List<string> { $"{Capital(ObservationWords.Of(end))} on {Day(end.At, zone)}, day {days}{why}." };
        if (jar.Standing.OfType<StageChange>().LastOrDefault(each => each != end && each.Went == Destination.Frozen) is { } frozen)
            words.Add($"Into the freezer on {Day(frozen.At, zone)}.");
        if (jar.Standing.OfType<StageChange>().FirstOrDefault(each => each.Stage == JarStage.Cold) is { } cold)
            words.Add($"Into the cold on {Day(cold.At, zone)}.");
        if (jar.Standing.OfType<Taste>().LastOrDefault() is { } taste)
            words.Add($"Last tasted {ObservationWords.Of(taste.Verdict)} on {Day(taste.At, zone)}.");
        words.Add(jar.Standing.OfType<PhMeasurement>().LastOrDefault() is { } measured
            ? string.Create(CultureInfo.InvariantCulture,
                $"Last measured {measured.Ph:0.0#} by {ObservationWords.Of(measured.Method)} on {Day(measured.At, zone)}.")
            : "Its pH was not measured.");
        return string.Join(" ", words);
    }

    private static string Day(Instant instant, DateTimeZone zone) => instant.InZone(zone).Date.ToString("d MMMM uuuu", CultureInfo.InvariantCulture);
}
