using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Forecasting;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>The latest forecast of a jar.</summary>
/// <param name="ModelVersion">The model that made it.</param>
/// <param name="AsOf">End of the last quarter hour it knew.</param>
/// <param name="Origin">Day 0 of its course.</param>
/// <param name="SourEnough">Days to the target.</param>
/// <param name="AcidLine">Days to pH 4.6 in the brine.</param>
/// <param name="AcidLineInPieces">Days to pH 4.6 in the middle of the largest piece.</param>
/// <param name="Course">The course.</param>
/// <param name="Remarks">What was assumed or widened.</param>
public sealed record ForecastAnswer(
    string ModelVersion, Instant AsOf, Instant Origin, DaysAnswer? SourEnough, DaysAnswer AcidLine, DaysAnswer AcidLineInPieces,
    IReadOnlyList<CoursePointAnswer> Course, IReadOnlyList<string> Remarks)
{
    /// <summary>The answer; null until the first forecast was made.</summary>
    public static ForecastAnswer? Of(JarView view) => view is { Forecast: { } forecast, ForecastAsOf: { } asOf }
        ? new(forecast.ModelVersion, asOf, view.Calendar.Origin, forecast.Target is { } target ? DaysAnswer.Of(target) : null,
            DaysAnswer.Of(forecast.AcidLine), DaysAnswer.Of(forecast.CentreAcidLine), [.. forecast.Course.Select(CoursePointAnswer.Of)],
                forecast.Remarks)
        : null;
}

/// <summary>The jar as it is expected at one time.</summary>
/// <param name="Day">Days after packing.</param>
/// <param name="TemperatureCelsius">Inside the jar.</param>
/// <param name="PhP10">One member in ten lies below.</param>
/// <param name="PhP50">The middle.</param>
/// <param name="PhP90">One member in ten lies above.</param>
/// <param name="AcidityPercentLacticP10">One member in ten lies below.</param>
/// <param name="AcidityPercentLacticP50">The middle.</param>
/// <param name="AcidityPercentLacticP90">One member in ten lies above.</param>
public sealed record CoursePointAnswer(
    double Day, double TemperatureCelsius, double PhP10, double PhP50, double PhP90,
    double AcidityPercentLacticP10, double AcidityPercentLacticP50, double AcidityPercentLacticP90)
{
    public static CoursePointAnswer Of(CoursePoint point) => new(point.Day, point.JarCelsius, point.Ph.P10, point.Ph.P50, point.Ph.P90,
        point.AcidityPercentLactic.P10, point.AcidityPercentLactic.P50, point.AcidityPercentLactic.P90);
}
