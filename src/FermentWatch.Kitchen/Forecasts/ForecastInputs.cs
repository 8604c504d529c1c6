using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
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
/// <param name="household">What finished jars taught; null where none did.</param>
internal sealed class ForecastInputs(
    Instant asOf, long meansRevision, IEnumerable<Place> places, IEnumerable<Sensor> sensors, HouseholdPrior? household)
{
    private readonly string _shared = string.Join('|', Text(asOf), meansRevision.ToString(CultureInfo.InvariantCulture),
        SharedText(places, sensors), household is null ? "" : Text(household));

    /// <summary>The name for one jar: looks, notes and sightings that the model does not read are no part of it.</summary>
    public string Of(Jar jar) => Hash($"{_shared}|{OwnText(jar, each => each is PhMeasurement or Taste or Sighting { Kind: SightingKind.Gas })}");

    /// <summary>What is the same for every jar: the model, the places, and where sensors stood.</summary>
    public static string SharedText(IEnumerable<Place> places, IEnumerable<Sensor> sensors) => string.Join('|',
        [Forecaster.ModelVersion, .. places.OrderBy(place => place.Id).Select(place => $"{place.Id:N}{place.Typical}"),
            .. sensors.SelectMany(sensor => sensor.Placements).OrderBy(placement => placement.Id).Select(placement => $"{placement.Id:N}{Text(placement.From)}")]);

    /// <summary>What is a jar's own, as far as lessons read it: also how it ended and whether it went well.</summary>
    public static string OwnText(Jar jar) => OwnText(jar, each => each is PhMeasurement or Taste or StageChange or Sighting);

    /// <summary>An observation never changes, so its id says all of it.</summary>
    private static string OwnText(Jar jar, Func<Observation, bool> isRead) => string.Join('|',
        [jar.Id.ToString("N"), jar.Target.ToString(),
            .. jar.Placements.OrderBy(placement => placement.Id).Select(placement => $"{placement.Id:N}{placement.PlaceId:N}{Text(placement.From)}"),
            .. jar.Standing.Where(isRead).Select(each => $"{each.Id:N}")]);

    /// <summary>A short name for a long text.</summary>
    public static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string Text(Instant instant) => instant.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture);

    private static string Text(HouseholdPrior prior) => string.Create(CultureInfo.InvariantCulture,
        $"{prior.LnRateMean:R}/{prior.LnRateDeviation:R}/{prior.LnTasteMean:R}/{prior.LnTasteDeviation:R}");
}
