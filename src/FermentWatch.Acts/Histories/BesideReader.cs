using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Acts.Histories;

/// <summary>Reads jars that are looked at side by side.</summary>
public sealed class BesideReader(JarReader jars, CourseReader courses)
{
    /// <summary>Every other jar that one may be put beside, those of the same vegetable first, then by number, the last first.</summary>
    public async Task<IReadOnlyList<JarView>> OthersAsync(JarView one, CancellationToken cancellationToken)
    {
        var all = (await jars.KeptAsync(cancellationToken)).Concat(await jars.PastAsync(cancellationToken));
        return [.. all.Where(other => other.Jar.Id != one.Jar.Id).OrderByDescending(other => SameYear.MainOf(other.Jar) == SameYear.MainOf(one.Jar))
            .ThenByDescending(other => other.Jar.Number)];
    }

    /// <summary>The course of a jar with what a table says of it; null where there is no such jar.</summary>
    public async Task<BesideJar?> FindAsync(int number, CancellationToken cancellationToken) =>
        await jars.FindAsync(number, cancellationToken) is { } view ? new BesideJar(await courses.OfAsync(view, cancellationToken)) : null;
}

/// <summary>The same jar of another year.</summary>
public static class SameYear
{
    private static readonly Duration Least = Duration.FromDays(270), Most = Duration.FromDays(460), Year = Duration.FromDays(365);

    /// <summary>What most of a jar is.</summary>
    public static string MainOf(Jar jar) => jar.Portions.MaxBy(portion => portion.MassKilograms)!.Produce;

    /// <summary>Last year's same jar: of the same vegetable, put up about a year before it; null where there was none.</summary>
    public static Jar? Before(Jar one, IEnumerable<Jar> others) => others
        .Where(other => MainOf(other) == MainOf(one) && one.PackedAt - other.PackedAt is var apart && apart >= Least && apart <= Most)
        .MinBy(other => Math.Abs((one.PackedAt - other.PackedAt - Year).TotalDays));
}

/// <summary>What a table says of a jar beside others.</summary>
/// <param name="Course">Its course.</param>
public sealed record BesideJar(CourseView Course)
{
    public JarView View => Course.View;

    /// <summary>Mean of what was measured in it or around it, Celsius; null where nothing was.</summary>
    public double? MeanCelsius => Points.Count == 0 ? null : Points.Average(point => point.Value);

    /// <summary>The coldest reading, Celsius.</summary>
    public double? ColdestCelsius => Points.Count == 0 ? null : Points.Min(point => point.Minimum);

    /// <summary>The first day on which a reading that counts lay below the line; null where none did.</summary>
    public int? BelowLineOnDay => DayOf(View.Measurements.FirstOrDefault(measured => AcidLine.Weigh(View.Jar, measured) == LineEvidence.CountsBelow));

    /// <summary>The first day on which it tasted right.</summary>
    public int? RightOnDay => DayOf(View.Jar.Standing.OfType<Taste>().FirstOrDefault(taste => taste.Verdict == TasteVerdict.Right));

    /// <summary>How often it was looked at.</summary>
    public int Looks => View.Jar.Standing.Count(entry => entry is Look);

    /// <summary>What was seen that asked for something, each once.</summary>
    public IEnumerable<SightingKind> Troubles => View.Jar.Standing.OfType<Sighting>().Select(seen => seen.Kind).Distinct();

    private IReadOnlyList<ReadingMean> Points => Course.Temperature.Points;

    private int? DayOf(Observation? entry) => entry is null ? null : Period.DaysBetween(
        View.Calendar.Date(0), entry.At.InZone(View.Household.Zone).Date);
}
