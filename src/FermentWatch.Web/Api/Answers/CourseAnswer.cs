using System.Globalization;
using FermentWatch.Acts.Histories;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>A jar's course: what was measured, expected and entered, as its picture shows it.</summary>
public sealed record CourseAnswer
{
    public required int Number { get; init; }

    public required string Name { get; init; }

    public required Instant PackedAt { get; init; }

    /// <summary>Present, or when it ended.</summary>
    public required Instant KnownUntil { get; init; }

    /// <summary>Whether it is still kept.</summary>
    public required bool IsKept { get; init; }

    /// <summary>The end of the picture.</summary>
    public required Instant ShownUntil { get; init; }

    /// <summary>Why it ends there, in a sentence.</summary>
    public required string EndsBecause { get; init; }

    /// <summary>The household's time zone, a name of the tz database.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The unit in which this household reads temperatures; every temperature here is in Celsius all the same.</summary>
    public required TemperatureUnit ReadsTemperaturesIn { get; init; }

    /// <summary>The face of the clock by which this household reads times; every time here is in UTC all the same.</summary>
    public required ClockFace ReadsTimesBy { get; init; }

    public double AcidLinePh { get; } = AcidLine.Ph;

    /// <summary>When it is sour enough: one chance in ten before the first, even chances, nine in ten by the last. Null where not forecast.</summary>
    public required WindowAnswer? SourEnough { get; init; }

    public required ExpectedAnswer Expected { get; init; }

    public required MeasuredColumns Temperature { get; init; }

    public required IReadOnlyList<CourseEntryAnswer> Entries { get; init; }

    public static CourseAnswer Of(CourseView course)
    {
        var view = course.View;
        Instant At(double day) => view.Calendar.Origin + Duration.FromDays(day);
        return new CourseAnswer
        {
            Number = view.Jar.Number, Name = view.Jar.Name, PackedAt = view.Jar.PackedAt, IsKept = view.IsKept,
            KnownUntil = view.Jar.EndedAt ?? view.Calendar.Now, ShownUntil = At(course.LastDay), EndsBecause = course.EndsBecause,
            TimeZone = view.Household.Zone.Id, ReadsTemperaturesIn = view.Household.TemperatureUnit,
            ReadsTimesBy = view.Household.ClockFace,
            SourEnough = view.Forecast?.Target is { P50: { } middle } target
                ? new WindowAnswer(At(target.P10 ?? middle), At(middle), target.P90 is { } late ? At(late) : null) : null,
            Expected = ExpectedAnswer.Of([.. course.Expected], At), Temperature = MeasuredColumns.Of(course.Temperature),
            Entries = [.. course.Entries.Select(entry => CourseEntryAnswer.Of(entry, course.WithPhoto.Contains(entry.Id)))
                .Concat(course.Moves.Select(move => new CourseEntryAnswer(move.At, "Move", $"moved to {move.To}", move.To)))
                .OrderBy(entry => entry.At)],
        };
    }
}

/// <summary>A span of days in which something is expected.</summary>
/// <param name="From">One chance in ten before it.</param>
/// <param name="Middle">Even chances.</param>
/// <param name="Until">Nine chances in ten by then; null where the forecast does not reach it.</param>
public sealed record WindowAnswer(Instant From, Instant Middle, Instant? Until);

/// <summary>What is expected, in columns of one length.</summary>
/// <param name="At">When.</param>
/// <param name="PhP10">One member in ten lies below.</param>
/// <param name="PhP50">The middle.</param>
/// <param name="PhP90">One member in ten lies above.</param>
/// <param name="LowCelsius">The coldest expected within half a day.</param>
/// <param name="HighCelsius">The warmest expected within half a day.</param>
public sealed record ExpectedAnswer(
    IReadOnlyList<DateTime> At, IReadOnlyList<double> PhP10, IReadOnlyList<double> PhP50, IReadOnlyList<double> PhP90,
    IReadOnlyList<double> LowCelsius, IReadOnlyList<double> HighCelsius)
{
    internal static ExpectedAnswer Of(CoursePoint[] points, Func<double, Instant> at)
    {
        // Half a day apart one point is of the day and the next of the night: a line through them would be a saw.
        IEnumerable<double> Near(int i) => points[Math.Max(0, i - 1)..Math.Min(points.Length, i + 2)].Select(point => point.JarCelsius);
        return new([.. points.Select(point => at(point.Day).ToDateTimeUtc())], [.. points.Select(point => MeasuredAnswer.Round(point.Ph.P10))],
            [.. points.Select(point => MeasuredAnswer.Round(point.Ph.P50))], [.. points.Select(point => MeasuredAnswer.Round(point.Ph.P90))],
            [.. points.Select((_, i) => MeasuredAnswer.Round(Near(i).Min()))], [.. points.Select((_, i) => MeasuredAnswer.Round(Near(i).Max()))]);
    }
}

/// <summary>Measured temperatures, in columns of one length.</summary>
/// <param name="PointSeconds">How long a point is; null where each is one reading.</param>
/// <param name="At">Where each starts.</param>
/// <param name="MeanCelsius">Its mean.</param>
/// <param name="MinimumCelsius">Its coldest reading.</param>
/// <param name="MaximumCelsius">Its warmest.</param>
public sealed record MeasuredColumns(
    long? PointSeconds, IReadOnlyList<DateTime> At, IReadOnlyList<double> MeanCelsius, IReadOnlyList<double> MinimumCelsius,
    IReadOnlyList<double> MaximumCelsius)
{
    internal static MeasuredColumns Of(MeasuredHistory history) => new((long?)history.Width?.TotalSeconds,
        [.. history.Points.Select(point => point.Start.ToDateTimeUtc())],
        [.. history.Points.Select(point => MeasuredAnswer.Round(point.Value))],
        [.. history.Points.Select(point => MeasuredAnswer.Round(point.Minimum))],
        [.. history.Points.Select(point => MeasuredAnswer.Round(point.Maximum))]);
}

/// <summary>Something entered of a jar, or a move.</summary>
/// <param name="At">When.</param>
/// <param name="Kind">The kind of observation, or <c>Move</c>.</param>
/// <param name="Words">What it says.</param>
/// <param name="InBrief">The same in a word or two.</param>
public sealed record CourseEntryAnswer(Instant At, string Kind, string Words, string InBrief)
{
    /// <summary>The pH and how it was measured, where it is a measurement.</summary>
    public double? Ph { get; init; }

    public string? Method { get; init; }

    /// <summary>Under which a photo is kept with it; null where none is.</summary>
    public Guid? Photo { get; init; }

    internal static CourseEntryAnswer Of(Observation entry, bool hasPhoto)
    {
        var ph = entry as PhMeasurement;
        string brief = entry switch
        {
            Taste taste => ObservationWords.Of(taste.Verdict),
            Sighting sighting => ObservationWords.InBrief(sighting.Kind),
            PhMeasurement measured => ObservationWords.Of(measured.Method),
            Titration titration => string.Create(CultureInfo.InvariantCulture, $"{titration.PercentLactic:0.0#} %"),
            _ => ObservationWords.Of(entry),
        };
        return new(entry.At, entry is PhMeasurement ? "Ph" : entry.GetType().Name, ObservationWords.Of(entry), brief)
        {
            Ph = ph?.Ph, Method = ph is null ? null : ObservationWords.Of(ph.Method), Photo = hasPhoto ? entry.Id : null,
        };
    }
}
