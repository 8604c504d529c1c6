using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Makes the forecast of one jar from its records and the temperatures it had.</summary>
public static class JarForecaster
{
    private const double DaysAhead = 60;
    private const double LongestSpanDays = 366;
    private const double CourseStepDays = 0.5;

    /// <summary>The forecast as of the last closed quarter hour. The same facts give the same bits.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="places">Every place it stood in.</param>
    /// <param name="history">Closed means, as <see cref="Surroundings"/> asks for them.</param>
    /// <param name="asOf">End of the last closed quarter hour.</param>
    /// <param name="household">What finished jars taught; null where none did.</param>
    /// <param name="inputs">Names everything it was made from.</param>
    public static JarForecast Forecast(
        Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, Instant asOf, HouseholdPrior? household, string inputs)
    {
        KeptRun? nothing = null;
        return Forecast(jar, places, history, asOf, household, inputs, ref nothing);
    }

    /// <summary>The same, going on from what was kept of the jar's forecast before.</summary>
    internal static JarForecast Forecast(Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, Instant asOf,
        HouseholdPrior? household, string inputs, ref KeptRun? kept)
    {
        Instant origin = QuarterHour.Floor(jar.PackedAt);
        double days = Math.Min(LongestSpanDays, Math.Max(0, Math.Ceiling(QuarterHour.Days(origin, asOf))) + DaysAhead);
        ForecastRequest request = Request(jar, Surroundings.Of(jar, places, history, asOf, days), days) with { Household = household };
        string facts = inputs[..Math.Min(inputs.Length, JarForecast.FactsLength)];
        (Forecast made, kept) = Forecaster.Run(request, facts, QuarterHour.Days(origin, asOf), kept);
        return new JarForecast(jar.Id, asOf, origin, inputs, Remedies.Widening(jar) is null ? made : WiderSpread.Of(made, days));
    }

    /// <summary>What the model is asked of a jar.</summary>
    internal static ForecastRequest Request(Jar jar, TemperatureCourse temperatures, double days)
    {
        Instant origin = QuarterHour.Floor(jar.PackedAt);
        return new ForecastRequest
        {
            Recipe = jar.Recipe(),
            Temperatures = temperatures,
            Readings = [.. Within<PhMeasurement>(jar, origin, days).Where(each => each.What.Ph is >= 2 and <= 8)
                .Select(each => new PhReading(each.Day, each.What.Ph, each.What.Method))
                .OrderBy(reading => reading.Day).ThenBy(reading => reading.Ph).ThenBy(reading => reading.Method)],
            Titrations = [.. Within<Titration>(jar, origin, days).Select(each => new AcidityReading(each.Day, each.What.PercentLactic))
                .OrderBy(titration => titration.Day).ThenBy(titration => titration.PercentLactic)],
            Tastes = [.. Within<Taste>(jar, origin, days).Select(each => new TasteReading(each.Day, Answer(each.What.Verdict)))],
            Gas = [.. Within<Sighting>(jar, origin, days).Where(each => each.What.Kind == SightingKind.Gas).Select(each =>
                new GasReading(each.Day, Seen: true))],
            Target = new ForecastTarget(TargetKind.AcidityPercentLactic, SournessLevel.Of(jar.Target).AcidityPercentLactic),
            Seed = (ulong)jar.Number,
            Days = days,
            EveryDays = CourseStepDays,
        };
    }

    private static IEnumerable<(double Day, T What)> Within<T>(Jar jar, Instant origin, double days) where T : Observation =>
        jar.Standing.OfType<T>().Where(each => each.At >= origin)
            .Select(each => (Day: (each.At - origin).TotalDays, What: each)).Where(each => each.Day <= days);

    private static TasteAnswer Answer(TasteVerdict verdict) => verdict switch
    {
        TasteVerdict.NotYet => TasteAnswer.NotYet,
        TasteVerdict.Nearly => TasteAnswer.Nearly,
        TasteVerdict.Right => TasteAnswer.Right,
        _ => TasteAnswer.PastIt,
    };
}
