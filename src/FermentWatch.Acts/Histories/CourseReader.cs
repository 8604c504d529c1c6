using System.Globalization;
using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Acts.Histories;

/// <summary>Reads a jar's course for its picture, its table and its CSV.</summary>
public sealed class CourseReader(HistoryReader histories, IPhotoBook photos, IPlaceBook places)
{
    /// <summary>More than any screen is wide in points that can be told apart.</summary>
    public const int MostPoints = 1500;

    /// <summary>A mean needs no more points than that.</summary>
    private const int PointsOfAMean = 100;

    private const double LeastCovered = 0.5;

    /// <summary>
    /// Mean of what was measured in a jar or around it from packing until an instant, Celsius; null where it was measured in less than half
    /// of that time, since a mean of the rest would tell of other days.
    /// </summary>
    public async Task<double?> MeanCelsiusAsync(Jar jar, Instant until, CancellationToken cancellationToken)
    {
        if (until <= jar.PackedAt)
            return null;
        MeasuredHistory measured = await histories.OfJarAsync(jar,
            new HistorySpan(Quantity.Temperature, jar.PackedAt, until, PointsOfAMean), cancellationToken);
        Duration covered = measured switch
        {
            { Points: [] } => Duration.Zero,
            { Width: { } width } => width * measured.Points.Count,
            _ => measured.Points[^1].Start - measured.Points[0].Start,
        };
        return covered < (until - jar.PackedAt) * LeastCovered ? null : measured.Points.Average(point => point.Value);
    }

    /// <summary>The course from packing on.</summary>
    public async Task<CourseView> OfAsync(JarView view, CancellationToken cancellationToken)
    {
        Instant packed = view.Calendar.Origin, until = view.Jar.EndedAt ?? view.Calendar.Now;
        MeasuredHistory temperature = packed < until
            ? await histories.OfJarAsync(view.Jar, new HistorySpan(Quantity.Temperature, packed, until, MostPoints), cancellationToken)
            : new MeasuredHistory(null, []);
        var names = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id, place => place.Name);
        return new CourseView
        {
            View = view, Temperature = temperature,
            WithPhoto = await photos.KeptAsync([.. view.Jar.Standing.Select(entry => entry.Id)], cancellationToken),
            Moves = [.. view.Jar.Placements.OrderBy(move => move.From).Skip(1).Where(move => move.From <= until)
                .Select(move => (move.From, names.GetValueOrDefault(move.PlaceId) ?? "a place that is gone"))],
        };
    }
}

/// <summary>What the picture of a jar's course shows.</summary>
public sealed record CourseView
{
    /// <summary>Days to look ahead of the present where nothing says more.</summary>
    private const double DaysAhead = 4, LeastDays = 10, AfterTheWindow = 2, MostDaysAhead = 14, OrdinaryDays = 45, OrdinaryTarget = 21;

    public required JarView View { get; init; }

    /// <summary>Measured in the jar or around it, Celsius.</summary>
    public required MeasuredHistory Temperature { get; init; }

    /// <summary>Observations with a photo.</summary>
    public required IReadOnlySet<Guid> WithPhoto { get; init; }

    /// <summary>When it was moved, and where to.</summary>
    public required IReadOnlyList<(Instant At, string To)> Moves { get; init; }

    /// <summary>The expected course up to the end of the picture; empty where nothing is forecast.</summary>
    public IEnumerable<CoursePoint> Expected => (View.Forecast?.Course ?? []).Where(point => point.Day <= LastDay);

    /// <summary>What stands of what was seen, tasted, measured and done.</summary>
    public IEnumerable<Observation> Entries => View.Jar.Standing;

    /// <summary>The last day shown, days after packing.</summary>
    public double LastDay => View.Forecast is not { } forecast ? Math.Max(1, Until(View.Jar.EndedAt ?? View.Calendar.Now))
        : Math.Max(View.NowDay, Math.Min(forecast.Course[^1].Day, Math.Ceiling(Math.Min(Wanted(forecast), Math.Max(OrdinaryDays,
            View.NowDay + MostDaysAhead)))));

    /// <summary>Why the picture ends where it does, in a sentence.</summary>
    public string EndsBecause => View switch
    {
        { IsKept: false } => $"It ends where the jar did. {View.SourEnough}",
        { Forecast: null } => $"It ends now. {View.SourEnough}",
        { Forecast: { } forecast } when forecast.Course[^1].Day <= View.NowDay =>
            "It ends now: a forecast reaches a year from packing, and that is over. What is measured goes on.",
        { Forecast: { } forecast } when LastDay >= forecast.Course[^1].Day =>
            "It ends where the forecast does: one reaches sixty days ahead, and a year from packing at most.",
        _ => "It ends a few days after the days that matter; the forecast goes on to "
            + View.Calendar.End.ToString("d MMMM uuuu.", CultureInfo.InvariantCulture),
    };

    private double Wanted(Forecast forecast) =>
        Math.Max(Math.Max(LeastDays, View.NowDay + DaysAhead), (forecast.Target?.P90 ?? forecast.Target?.P50 ?? OrdinaryTarget) + AfterTheWindow);

    private double Until(Instant end) => (end - View.Calendar.Origin).TotalDays;
}
