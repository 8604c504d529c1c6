using System.Globalization;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>
/// Which means a jar's temperature is made of: those of its own probe and of the places where it stood, no others. Names them without
/// reading them, so that what another shelf measured, or an open quarter hour, renews nothing.
/// </summary>
/// <param name="log">The log.</param>
/// <param name="sensors">Every sensor with its placements.</param>
internal sealed class MeansOfJars(IReadingLog log, IReadOnlyList<Sensor> sensors)
{
    private static readonly Duration Day = Duration.FromDays(1);

    private readonly Dictionary<SensorSpan, MeanStamp> _stamps = [];

    /// <summary>End of the newest closed quarter hour of the last day that was measured in the jar or where it stands; null where none
    /// was.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="closed">End of the last closed quarter hour.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task<Instant?> NewestAsync(Jar jar, Instant closed, CancellationToken cancellationToken)
    {
        Guid place = jar.PlacementAt(closed + QuarterHour.Length).PlaceId;
        var spans = sensors.SelectMany(sensor =>
            SensorSpans.Of(sensor, place, closed - Day, closed).Concat(SensorSpans.Of(sensor, jar.Id, closed - Day, closed)));
        IReadOnlyList<MeanStamp> stamps = await StampsAsync([.. spans], cancellationToken);
        return stamps.Max(stamp => stamp.Newest) + QuarterHour.Length;
    }

    /// <summary>Names the means that a forecast as of an instant is made from: the same name, the same means.</summary>
    public async Task<string> NameAsync(Jar jar, Instant asOf, CancellationToken cancellationToken)
    {
        SensorSpan[] spans = [.. SpansOf(jar, asOf)];
        IReadOnlyList<MeanStamp> stamps = await StampsAsync(spans, cancellationToken);
        return string.Join('|', spans.Zip(stamps, (span, stamp) => string.Create(CultureInfo.InvariantCulture,
            $"{span.SensorKey}:{Text(span.From)}-{Text(span.Until)}={stamp.Count}@{stamp.Revision}")));
    }

    /// <summary>Sensors that measured any of these jars or where they stood.</summary>
    public IReadOnlyList<Sensor> AmongThem(IEnumerable<(Jar Jar, Instant AsOf)> jars)
    {
        var keys = jars.SelectMany(each => SpansOf(each.Jar, each.AsOf)).Select(span => span.SensorKey).ToHashSet();
        return [.. sensors.Where(sensor => keys.Contains(sensor.Key))];
    }

    internal IEnumerable<SensorSpan> SpansOf(Jar jar, Instant asOf)
    {
        Instant packed = QuarterHour.Floor(jar.PackedAt), learnedFrom = asOf - Surroundings.LearnedFrom;
        foreach (Sensor sensor in sensors.OrderBy(sensor => sensor.Key))
        {
            foreach (SensorSpan inJar in SensorSpans.Of(sensor, jar.Id, Instant.Min(packed, learnedFrom), asOf))
                yield return inJar;
            foreach (Surroundings.Stay stay in Surroundings.Stays(jar, packed, asOf))
                foreach (SensorSpan there in SensorSpans.Of(sensor, stay.PlaceId, stay.From, stay.Until))
                    yield return there;
            foreach (SensorSpan learned in SensorSpans.Of(sensor, Surroundings.PlaceAhead(jar, asOf), learnedFrom, asOf))
                yield return learned;
        }
    }

    private async Task<IReadOnlyList<MeanStamp>> StampsAsync(SensorSpan[] spans, CancellationToken cancellationToken)
    {
        SensorSpan[] unknown = [.. spans.Where(span => !_stamps.ContainsKey(span)).Distinct()];
        if (unknown.Length > 0)
        {
            IReadOnlyList<MeanStamp> read = await log.MeanStampsAsync(Quantity.Temperature, MeanSpan.QuarterHour, unknown, cancellationToken);
            for (int i = 0; i < unknown.Length; i++)
                _stamps[unknown[i]] = read[i];
        }
        return [.. spans.Select(span => _stamps[span])];
    }

    private static string Text(Instant instant) => instant.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture);
}
