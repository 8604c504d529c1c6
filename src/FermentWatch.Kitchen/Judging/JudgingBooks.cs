using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Kitchen.Judging;

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
