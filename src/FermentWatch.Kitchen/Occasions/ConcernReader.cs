using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Reads which sensors a person should look at.</summary>
public sealed class ConcernReader(ISensorBook sensors, ISourceRuleBook rules, IProbeBook probes, IReadingLog log)
{
    /// <summary>What is wrong with sensors in service: of each sensor the first of a kind. Two that disagree are one concern.</summary>
    public async Task<IReadOnlyList<SensorConcern>> ReadAsync(TemperatureUnit unit, Instant now, CancellationToken cancellationToken)
    {
        Sensor[] inService = [.. (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null)];
        var limits = new SourceLimits(await rules.AllAsync(cancellationToken), await rules.FeedsAsync(cancellationToken));
        var watch = new SensorWatch(log, inService, limits, await probes.StandingAsync(cancellationToken), unit, now);
        var concerns = new List<SensorConcern>();
        foreach (Sensor sensor in inService)
        {
            IReadOnlyList<SensorWarning> warnings = await watch.WarningsAsync(sensor, await log.LastAsync(sensor.Key, cancellationToken),
                cancellationToken);
            concerns.AddRange(warnings.Where(warning => warning.OtherSensor is null || sensor.Id.CompareTo(warning.OtherSensor) < 0)
                .Select(warning => new SensorConcern(KindOf(warning.Kind), sensor.Id, sensor.Name,
                    $"{warning.Kind} {warning.OtherSensor:N}".TrimEnd(), warning.Words)).DistinctBy(concern => concern.Kind));
        }
        return concerns;
    }

    private static OccasionKind KindOf(SensorWarningKind kind) => kind switch
    {
        SensorWarningKind.Silent => OccasionKind.SensorSilent,
        SensorWarningKind.Calibration or SensorWarningKind.Drift => OccasionKind.CalibrationDue,
        _ => OccasionKind.SensorWrong,
    };
}

/// <summary>A sensor that a person should look at.</summary>
/// <param name="Kind">One of the kinds about sensors.</param>
/// <param name="SensorId">The sensor.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Cause">What is wrong, by name.</param>
/// <param name="Words">What it is and what to do, in a sentence or two.</param>
public sealed record SensorConcern(OccasionKind Kind, Guid SensorId, string Name, string Cause, string Words);
