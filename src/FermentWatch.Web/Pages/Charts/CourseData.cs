using FermentWatch.Acts.Histories;
using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Web.Pages.Charts;

/// <summary>What the picture of a jar's course shows.</summary>
public sealed record CourseData
{
    private const double OrdinaryGapDays = 0.125;

    /// <summary>The expected course, by day.</summary>
    public required IReadOnlyList<CoursePoint> Course { get; init; }

    /// <summary>Measured temperatures around or in the jar, by day; a gap longer than <see cref="LongestGapDays"/> is left open.</summary>
    public required IReadOnlyList<TimedTemperature> Measured { get; init; }

    /// <summary>Between two temperatures that are joined, days: three hours, or two and a half times as long as each of them is.</summary>
    public double LongestGapDays { get; init; } = OrdinaryGapDays;

    /// <summary>Standing pH measurements.</summary>
    public required IReadOnlyList<PhMeasurement> Readings { get; init; }

    /// <summary>What else was seen, tasted or done and stands.</summary>
    public IReadOnlyList<Observation> Entries { get; init; } = [];

    /// <summary>Acidity at which the jar is as sour as wanted, per cent lactic.</summary>
    public required double TargetPercentLactic { get; init; }

    public required ForecastCalendar Calendar { get; init; }

    public required TemperatureUnit Unit { get; init; }

    /// <summary>Last day shown.</summary>
    public required double LastDay { get; init; }

    /// <summary>From when to when it is sour enough, days after packing: one chance in ten before, nine in ten by the end of it. Null where not
    /// forecast.</summary>
    public (double From, double Until)? Window { get; init; }

    /// <summary>What a course shows.</summary>
    public static CourseData Of(CourseView course)
    {
        JarView view = course.View;
        return new CourseData
        {
            Course = view.Forecast?.Course ?? [],
            Measured = [.. course.Temperature.Points.Select(point =>
                new TimedTemperature((point.Start - view.Calendar.Origin).TotalDays, point.Value))],
            LongestGapDays = Math.Max(OrdinaryGapDays, 2.5 * (course.Temperature.Width?.TotalDays ?? 0)),
            Readings = view.Measurements, Entries = [.. view.Jar.Standing], TargetPercentLactic = view.Target.AcidityPercentLactic,
            Window = view.Forecast?.Target is { P10: { } from } target ? (from, target.P90 ?? course.LastDay) : null,
            Calendar = view.Calendar, Unit = view.Household.TemperatureUnit, LastDay = course.LastDay,
        };
    }

    /// <summary>Present day after packing, with its fraction.</summary>
    public double NowDay => (Calendar.Now - Calendar.Origin).TotalDays;
}

/// <summary>A measured pH in the picture; its shape tells the method.</summary>
/// <param name="X">Picture units from the left.</param>
/// <param name="Y">Picture units from the top.</param>
/// <param name="Method">How it was measured.</param>
public sealed record MeasuredPoint(double X, double Y, PhMethod Method);
