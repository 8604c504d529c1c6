using System.Globalization;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>Looks at sensors as a whole: what no single reading shows.</summary>
/// <param name="log">The log.</param>
/// <param name="sensors">Every sensor in service.</param>
/// <param name="limits">What source rules say of them.</param>
/// <param name="checks">What their probes showed in buffers.</param>
/// <param name="unit">The household's unit.</param>
/// <param name="now">The present.</param>
public sealed class SensorWatch(
    IReadingLog log, IReadOnlyList<Sensor> sensors, SourceLimits limits, IReadOnlyList<ProbeCheck> checks, TemperatureUnit unit, Instant now)
{
    private static readonly Duration Compared = Duration.FromHours(6);
    private static readonly Duration JustNow = Duration.FromMinutes(30);
    private static readonly Duration Settled = Duration.FromHours(2);
    private static readonly Duration Remembered = Duration.FromDays(3);
    private const int FewestFigures = 3;

    // First a short look back, and a longer one only for those that are seldom heard: a fast sensor has thousands of readings a day.
    private static readonly Duration[] LooksBack = [Duration.FromHours(1), Duration.FromHours(12), Duration.FromDays(10)];
    private const int EnoughArrivals = 30;

    /// <summary>What a person should look at, the most urgent first.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="last">Its last reading of each quantity.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task<IReadOnlyList<SensorWarning>> WarningsAsync(Sensor sensor, IReadOnlyList<JudgedReading> last,
        CancellationToken cancellationToken)
    {
        var warnings = new List<SensorWarning>();
        if (last.Count == 0)
            return warnings;
        if (await SilenceAsync(sensor, last, cancellationToken) is { } silence)
            warnings.Add(silence);
        if (last.Any(entry => entry.Verdict == Verdict.Stuck))
            warnings.Add(new SensorWarning(SensorWarningKind.Stuck,
                "The same value for more than a day: it probably hangs. Take its power away for a moment."));
        if (last.FirstOrDefault(entry => entry.Reading.Quantity == Quantity.Temperature) is { } temperature)
        {
            if (await UnitShiftAsync(sensor, temperature.Reading, cancellationToken) is { } shift)
                warnings.Add(shift);
            warnings.AddRange(await DisagreementsAsync(sensor, cancellationToken));
        }
        if (ProbeStanding.Of(sensor, last, checks, now) is { } probe)
            warnings.AddRange(ProbeWords.Warnings(probe, now));
        return warnings;
    }

    private async Task<SensorWarning?> SilenceAsync(Sensor sensor, IReadOnlyList<JudgedReading> last, CancellationToken cancellationToken)
    {
        // By when it was received: a device whose clock was wrong once must not be silent for the years between.
        if (await log.LastHeardAsync(sensor.Key, cancellationToken) is not { } heard)
            return null;
        Duration allowed = limits.LongestSilenceOf(sensor) ?? ReportingRhythm.SilentAfter(await ArrivalsAsync(sensor, last, cancellationToken));
        return now - heard <= allowed ? null : new SensorWarning(
            SensorWarningKind.Silent,
            $"Silent: last heard {Span(now - heard)} ago, and it may be silent for {Span(allowed)}. Look at its power and its network.");
    }

    private async Task<List<Instant>> ArrivalsAsync(Sensor sensor, IReadOnlyList<JudgedReading> last, CancellationToken cancellationToken)
    {
        Reading latest = last.MaxBy(entry => entry.Reading.ReceivedAt)!.Reading;
        List<Instant> arrivals = [];
        foreach (Duration back in LooksBack)
        {
            arrivals = [.. (await log.ReadAsync(sensor.Key, latest.Quantity, latest.MeasuredAt - back,
                Bounded.Later(latest.MeasuredAt, Duration.FromMilliseconds(1)), cancellationToken))
                .Select(entry => entry.Reading.ReceivedAt).Distinct()];
            if (arrivals.Count >= EnoughArrivals)
                break;
        }
        return arrivals;
    }

    private async Task<SensorWarning?> UnitShiftAsync(Sensor sensor, Reading latest, CancellationToken cancellationToken)
    {
        double[] figures = [.. (await log.ReadAsync(sensor.Key, Quantity.Temperature, latest.MeasuredAt - JustNow,
            Bounded.Later(latest.MeasuredAt, Duration.FromMilliseconds(1)), cancellationToken))
            .Select(entry => entry.Reading.Value).Where(value => !MeasuredQuantity.Of(Quantity.Temperature).IsSentinel(value)).Order()];
        double[] before = [.. (await log.MeansAsync(
            sensor.Key, Quantity.Temperature, MeanSpan.Hour, latest.MeasuredAt - Remembered, latest.MeasuredAt - Settled,
                cancellationToken)).Select(mean => mean.Value).Order()];
        if (figures.Length < FewestFigures || before.Length < FewestFigures)
            return null;
        string? looksLike = UnitShift.Of(before[before.Length / 2], figures[figures.Length / 2]) switch
        {
            TemperatureUnit.Fahrenheit => "Fahrenheit",
            TemperatureUnit.Celsius => "Celsius, and to have been in Fahrenheit before",
            _ => null,
        };
        return looksLike is null ? null : new SensorWarning(SensorWarningKind.UnitShift,
            $"Its figures moved from {Figure(before[before.Length / 2])} to {Figure(figures[figures.Length / 2])} and seem to be in {looksLike}. "
            + "Set the unit on the device or in its rule.");
    }

    private async Task<List<SensorWarning>> DisagreementsAsync(Sensor sensor, CancellationToken cancellationToken)
    {
        var warnings = new List<SensorWarning>();
        if (sensor.PlacementAt(now) is not { PlaceId: { } place } placement)
            return warnings;
        foreach (Sensor other in sensors)
        {
            if (other.Id == sensor.Id || other.PlacementAt(now) is not { } beside || beside.PlaceId != place)
                continue;
            Instant since = Instant.Max(now - Compared, Instant.Max(placement.From, beside.From));
            if (Disagreement.Between(await MeansAsync(sensor, since, cancellationToken),
                await MeansAsync(other, since, cancellationToken)) is { } apart)
                warnings.Add(new SensorWarning(SensorWarningKind.Disagrees,
                    $"{MeasureWords.TemperatureDifference(Math.Abs(apart), unit)} {(apart > 0 ? "above" : "below")} {other.Name}, which stands in "
                    + "the same place. One may be in the sun or by the stove.") { OtherSensor = other.Id });
        }
        return warnings;
    }

    private Task<IReadOnlyList<ReadingMean>> MeansAsync(Sensor sensor, Instant since, CancellationToken cancellationToken) =>
        log.MeansAsync(sensor.Key, Quantity.Temperature, MeanSpan.QuarterHour, since, now, cancellationToken);

    private static string Figure(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Span(Duration span) => span.TotalHours < 2
        ? string.Create(CultureInfo.InvariantCulture, $"{span.TotalMinutes:0} minutes")
        : span.TotalDays < 2
            ? string.Create(CultureInfo.InvariantCulture, $"{span.TotalHours:0} hours")
            : string.Create(CultureInfo.InvariantCulture, $"{span.TotalDays:0} days");
}
