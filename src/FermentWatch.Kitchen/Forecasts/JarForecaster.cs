using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Makes the forecast of one jar from its records and the temperatures it had.</summary>
public static class JarForecaster
{
    private const double DaysAhead = 60;
    private const double LongestSpanDays = 366;
    private const double CourseStepDays = 0.5;

    /// <summary>The forecast as of the last closed quarter hour. The same facts give the same bits.</summary>
    public static JarForecast Forecast(Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, Instant asOf, string inputs)
    {
        Instant origin = QuarterHour.Floor(jar.PackedAt);
        double days = Math.Min(LongestSpanDays, Math.Max(0, Math.Ceiling(QuarterHour.Days(origin, asOf))) + DaysAhead);
        var request = new ForecastRequest
        {
            Recipe = jar.Recipe(),
            Temperatures = Surroundings.Of(jar, places, history, asOf, days),
            Readings = Readings(jar, origin, days),
            Target = new ForecastTarget(TargetKind.AcidityPercentLactic, SournessLevel.Of(jar.Target).AcidityPercentLactic),
            Seed = (ulong)jar.Number,
            Days = days,
            EveryDays = CourseStepDays,
        };
        return new JarForecast(jar.Id, asOf, origin, inputs, Forecaster.Run(request));
    }

    private static List<PhReading> Readings(Jar jar, Instant origin, double days) =>
        [.. jar.Standing.OfType<PhMeasurement>()
            .Where(measurement => measurement.At >= origin)
            .Select(measurement => new PhReading((measurement.At - origin).TotalDays, measurement.Ph, measurement.Method))
            .Where(reading => reading.Day <= days && reading.Ph is >= 2 and <= 8)
            .OrderBy(reading => reading.Day).ThenBy(reading => reading.Ph).ThenBy(reading => reading.Method)];
}
