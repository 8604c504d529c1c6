using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.Publishing;

/// <summary>What others are told of a jar on its topic. Fields are added, never renamed; <see cref="V"/> changes with their meaning.</summary>
public sealed record JarState
{
    public int V { get; } = 1;

    public required int Jar { get; init; }

    public required string Name { get; init; }

    public required string Place { get; init; }

    /// <summary><c>fermenting</c>, <c>cold</c>, <c>finished</c> or <c>thrownOut</c>.</summary>
    public required string Stage { get; init; }

    /// <summary><c>notMeasured</c>, <c>measuredBelow</c> or <c>measuredAbove</c>: what was measured, never a judgement on the food.</summary>
    public required string AcidLine { get; init; }

    public double? MeasuredPh { get; init; }

    public string? MeasuredAt { get; init; }

    public required bool ForecastWithdrawn { get; init; }

    public string? ForecastAsOf { get; init; }

    public string? ModelVersion { get; init; }

    public double? ExpectedPhP10 { get; init; }

    public double? ExpectedPhP50 { get; init; }

    public double? ExpectedPhP90 { get; init; }

    public double? ExpectedAcidityPercentLacticP50 { get; init; }

    public double? DaysToTargetP10 { get; init; }

    public double? DaysToTargetP50 { get; init; }

    public double? DaysToTargetP90 { get; init; }

    /// <summary>The state of a jar at the present quarter hour, by its latest forecast.</summary>
    public static JarState Of(Jar jar, string place, JarForecast? forecast, DateTimeZone zone, Instant present)
    {
        AcidLineReport line = AcidLines.AcidLine.Report(jar, zone);
        bool withdrawn = Trouble.Of(jar, zone).ForecastWithdrawn;
        JarForecast? told = withdrawn ? null : forecast;
        Instant quarter = QuarterHour.Floor(present);
        CoursePoint? now = told?.PointAt(quarter);
        double age = told is null ? 0 : (quarter - told.Origin).TotalDays;
        return new JarState
        {
            Jar = jar.Number, Name = jar.Name, Place = place, Stage = Camel(jar.Stage.ToString()), AcidLine = Camel(line.State.ToString()),
            MeasuredPh = line.LastCounted?.Ph, MeasuredAt = line.LastCounted?.At.ToString(), ForecastWithdrawn = withdrawn,
            ForecastAsOf = told?.AsOf.ToString(), ModelVersion = told?.Forecast.ModelVersion,
            ExpectedPhP10 = Round(now?.Ph.P10), ExpectedPhP50 = Round(now?.Ph.P50), ExpectedPhP90 = Round(now?.Ph.P90),
            ExpectedAcidityPercentLacticP50 = Round(now?.AcidityPercentLactic.P50),
            DaysToTargetP10 = Round(told?.Forecast.Target?.P10 - age), DaysToTargetP50 = Round(told?.Forecast.Target?.P50 - age),
            DaysToTargetP90 = Round(told?.Forecast.Target?.P90 - age),
        };
    }

    /// <summary>Three decimals: more would change with every renewal and tell nothing.</summary>
    private static double? Round(double? value) => value is { } number ? Math.Round(number, 3) : null;

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
