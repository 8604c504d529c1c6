using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>By how much a sensor, a strip or a meter would narrow a jar's forecast if each said just what is expected.</summary>
/// <param name="Now">Days to the target as things stand.</param>
/// <param name="WithSensor">The same had a sensor measured the room so far; null where one did.</param>
/// <param name="WithStrip">With a strip now, or on day 3 if that is later.</param>
/// <param name="WithMeter">With a meter then.</param>
/// <param name="WithWeighedSalt">Had the salt been weighed; null where it was.</param>
public sealed record Sharpening(PassageDays Now, PassageDays? WithSensor, PassageDays WithStrip, PassageDays WithMeter, PassageDays? WithWeighedSalt)
{
    /// <summary>How far an ordinary kitchen swings by day and night, half of it; common practice, no source.</summary>
    private const double OrdinarySwingCelsius = 1;

    /// <summary>Before the acid has begun a pH says little; the page speaks of a reading on this day then.</summary>
    public const int MeasuredNotBeforeDay = 3;

    /// <summary>Works it out: three or four forecasts of one jar, some tens of milliseconds each.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="places">Every place it stood in.</param>
    /// <param name="history">Closed means, as <see cref="Surroundings"/> asks for them.</param>
    /// <param name="saved">Its latest forecast.</param>
    public static Sharpening Of(Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, JarForecast saved)
    {
        ForecastRequest request = WhatIf.RequestOf(jar, places, history, saved);
        (TemperatureCourse course, double days) = (request.Temperatures, request.Days);
        double now = Math.Max(0, QuarterHour.Days(saved.Origin, saved.AsOf));
        double measured = Math.Max(now, MeasuredNotBeforeDay);
        double expected = saved.PointAt(saved.At(measured)).Ph.P50;
        PassageDays With(PhMethod method) =>
            Forecaster.Run(request with { Readings = [.. request.Readings, new PhReading(measured, expected, method)] }).Target ?? default;
        return new Sharpening(
            saved.Forecast.Target ?? default,
            course[0].SpreadCelsius > TemperatureStep.RoomSensorSpreadCelsius
                ? Forecaster.Run(request with { Temperatures = Measured(course, places[jar.PlacementAt(saved.AsOf).PlaceId], now, days) }).Target
                    : null,
            With(PhMethod.Strip), With(PhMethod.Meter),
            jar.Salting.Knowledge == SaltKnowledge.ByTaste
                ? Forecaster.Run(request with { Recipe = request.Recipe with { Salt = SaltDose.Weighed(request.Recipe.Salt.Percent) } }).Target
                    : null);
    }

    /// <summary>The same temperatures as a room sensor would have told them, and the outlook of a room whose last days are known.</summary>
    private static TemperatureCourse Measured(TemperatureCourse course, Place place, double now, double days)
    {
        int past = (int)Math.Round(now * TemperatureCourse.StepsPerDay), all = (int)Math.Ceiling(days * TemperatureCourse.StepsPerDay);
        double?[] learned = [.. Enumerable.Range(0, (int)(Surroundings.LearnedFrom.TotalDays * TemperatureCourse.StepsPerDay))
            .Select(step => (double?)(
                place.Typical.Room().MeanCelsius + (OrdinarySwingCelsius * Math.Sin(step * Math.Tau / TemperatureCourse.StepsPerDay))))];
        IEnumerable<TemperatureStep> ahead = RoomOutlook.Learn(learned, place.Typical.Room(), false).Ahead(Math.Max(1, all - past));
        return TemperatureCourse.FromSteps(
            [.. Enumerable.Range(0, past).Select(step => TemperatureStep.Room(course[step].Celsius)), .. ahead], place.Typical.Room());
    }
}
