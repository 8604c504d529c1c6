using System.Globalization;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Readings;
using InfluxDB.Client.Api.Domain;
using InfluxDB.Client.Writes;
using NodaTime;

namespace FermentWatch.Export.Points;

/// <summary>
/// The points of the series. Measurements, tags and fields are a contract: others store them and draw them, they are added to and
/// never renamed. Fields are always floats, times are whole milliseconds. A tag without a value is left out, as line protocol asks.
/// Each method gives null where the owner is not among the names.
/// </summary>
public static class SeriesPoints
{
    /// <summary>A reading, in the unit of its quantity as it is stored.</summary>
    public static PointData? Of(Reading reading, OwnerNames names, string site)
    {
        if (names.Sensor(reading.SensorKey) is not { } sensor || !names.TryPlaceOf(sensor, reading.MeasuredAt, out string? place))
            return null;
        return Point("reading", site, place, reading.MeasuredAt)
            .Tag("sensor", sensor.Slug)
            .Tag("quantity", MeasuredQuantity.Of(reading.Quantity).Name)
            .Field("value", reading.Value);
    }

    /// <summary>An estimate: pH, per cent lactic acid, mmol/L, days. Days to the target are left out where they are not known.</summary>
    public static PointData? Of(SavedEstimate estimate, OwnerNames names, string site)
    {
        if (names.Jar(estimate.JarId) is not { } jar)
            return null;
        PointData point = Point("estimate", site, names.PlaceOf(jar, estimate.MadeAt), estimate.MadeAt)
            .Tag("jar", Number(jar.Number))
            .Field("ph_p10", estimate.PhP10)
            .Field("ph_p50", estimate.PhP50)
            .Field("ph_p90", estimate.PhP90)
            .Field("acidity_p50", estimate.AcidityPercentLacticP50)
            .Field("sourness_p50", estimate.SournessP50);
        return estimate.DaysToTargetP50 is { } days ? point.Field("days_to_target_p50", days) : point;
    }

    /// <summary>
    /// An observation. Its value is the pH; for a titration (<c>acidity</c>) per cent lactic; for a taste 1 not yet, 2 nearly, 3 right, 4
    /// past it; for a check 0 when all was well and 1 when something was seen that asks for an action.
    /// </summary>
    public static PointData? Of(LoggedObservation logged, OwnerNames names, string site)
    {
        if (names.Jar(logged.Observation.JarId) is not { } jar)
            return null;
        (string kind, double value) = KindAndValue(logged.Observation);
        return Point("observation", site, names.PlaceOf(jar, logged.Observation.At), logged.At)
            .Tag("jar", Number(jar.Number))
            .Tag("kind", kind)
            .Field("value", value);
    }

    private static PointData Point(string measurement, string site, string? place, Instant at) =>
        PointData.Measurement(measurement).Tag("site", site).Tag("place", place).Timestamp(at, WritePrecision.Ms);

    private static string Number(int jar) => jar.ToString(CultureInfo.InvariantCulture);

    private static (string Kind, double Value) KindAndValue(Observation observation) => observation switch
    {
        Look => ("check", 0),
        Sighting => ("check", 1),
        Taste taste => ("taste", Value(taste.Verdict)),
        PhMeasurement measurement => ("ph", measurement.Ph),
        Titration titration => ("acidity", titration.PercentLactic),
        _ => throw new ArgumentException($"A {observation.GetType().Name} is not passed on.", nameof(observation)),
    };

    // Written out, as the names are: what is stored elsewhere must not change with our own numbers.
    private static double Value(TasteVerdict verdict) => verdict switch
    {
        TasteVerdict.NotYet => 1,
        TasteVerdict.Nearly => 2,
        TasteVerdict.Right => 3,
        TasteVerdict.PastIt => 4,
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a taste we know."),
    };
}
