using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>What readings are judged by besides their neighbours: the ranges of their sources and the calibrations of their probes.</summary>
public sealed class JudgingBasis
{
    private readonly Dictionary<int, Sensor> _sensors;
    private readonly SourceLimits _limits;
    private readonly ILookup<Guid, (Instant From, bool Accepted)> _calibrations;

    /// <summary>A basis of what is on record.</summary>
    public JudgingBasis(IEnumerable<Sensor> sensors, SourceLimits limits, IEnumerable<ProbeCheck> checks)
    {
        _sensors = sensors.ToDictionary(sensor => sensor.Key);
        _limits = limits;
        _calibrations = checks.OrderBy(check => check.At).ThenBy(check => check.Id)
            .ToLookup(check => check.SensorId, check => (check.At, check.Calibration.IsAccepted));
    }

    /// <summary>Nothing on record: every quantity by its own range.</summary>
    public static JudgingBasis Plain { get; } = new([], new SourceLimits([], []), []);

    /// <summary>What a quantity of a sensor can plausibly show.</summary>
    public PlausibleRange RangeOf(int sensorKey, Quantity quantity) =>
        _sensors.TryGetValue(sensorKey, out Sensor? sensor) ? _limits.RangeOf(sensor, quantity) : MeasuredQuantity.Of(quantity).Range;

    /// <summary>Whether a probe's reading was taken after a check in buffers that was not accepted, and before the next.</summary>
    public bool IsBadlyCalibrated(int sensorKey, Quantity quantity, Instant at) =>
        MeasuredQuantity.Of(quantity).IsByElectrode
        && _sensors.TryGetValue(sensorKey, out Sensor? sensor)
        && _calibrations[sensor.Id].Where(calibration => calibration.From <= at).Select(calibration =>
            (bool?)calibration.Accepted).LastOrDefault() == false;
}

/// <summary>The records that readings are judged by.</summary>
public sealed class JudgingBooks(ISensorBook sensors, ISourceRuleBook rules, IProbeBook probes, IRejudgeBook orders)
{
    /// <summary>What is to be judged again. To be read before the basis, so that what was ordered is in it.</summary>
    public Task<IReadOnlyList<RejudgeOrder>> OrdersAsync(CancellationToken cancellationToken) => orders.PendingAsync(cancellationToken);

    /// <summary>Strikes off an order that was carried out.</summary>
    public Task DoneAsync(RejudgeOrder order, CancellationToken cancellationToken) => orders.DoneAsync(order.Id, cancellationToken);

    /// <summary>The key under which the log files a sensor; null where there is no such sensor.</summary>
    public async Task<int?> KeyOfAsync(Guid sensorId, CancellationToken cancellationToken) =>
        (await sensors.AllAsync(cancellationToken)).FirstOrDefault(sensor => sensor.Id == sensorId)?.Key;

    /// <summary>What is on record at present.</summary>
    public async Task<JudgingBasis> BasisAsync(CancellationToken cancellationToken) => new(
        await sensors.AllAsync(cancellationToken),
        new SourceLimits(await rules.AllAsync(cancellationToken), await rules.FeedsAsync(cancellationToken)),
        await probes.StandingAsync(cancellationToken));
}
