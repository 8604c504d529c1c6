using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Names everything a forecast is made from, so that one whose inputs have not changed is not made again.</summary>
/// <param name="asOf">End of the last closed quarter hour.</param>
/// <param name="meansRevision">Revision of the quarter-hour means.</param>
/// <param name="places">Every place.</param>
/// <param name="sensors">Every sensor with its placements.</param>
internal sealed class ForecastInputs(Instant asOf, long meansRevision, IEnumerable<Place> places, IEnumerable<Sensor> sensors)
{
    private readonly string _shared = string.Join('|',
        [Forecaster.ModelVersion, Text(asOf), meansRevision.ToString(CultureInfo.InvariantCulture),
            .. places.OrderBy(place => place.Id).Select(place => $"{place.Id:N}{place.Typical}"),
            .. sensors.SelectMany(sensor => sensor.Placements).OrderBy(placement => placement.Id).Select(placement => $"{placement.Id:N}{Text(placement.From)}")]);

    /// <summary>The name for one jar: looks, tastes and notes are no part of it.</summary>
    public string Of(Jar jar)
    {
        string own = string.Join('|',
            [_shared, jar.Id.ToString("N"), jar.Target.ToString(),
                .. jar.Placements.OrderBy(placement => placement.Id).Select(placement => $"{placement.Id:N}{placement.PlaceId:N}{Text(placement.From)}"),
                .. jar.Standing.OfType<PhMeasurement>().Select(measurement => $"{measurement.Id:N}")]);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(own)));
    }

    private static string Text(Instant instant) => instant.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture);
}
