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
            DaysAnswer.Of(forecast.AcidLine), DaysAnswer.Of(forecast.CentreAcidLine), [.. forecast.Course.Select(CoursePointAnswer.Of)], forecast.Remarks)
        : null;
}
