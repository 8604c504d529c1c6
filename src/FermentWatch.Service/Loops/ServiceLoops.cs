using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.States;
using NodaTime;

namespace FermentWatch.Service.Loops;

/// <summary>The loops of the service, in the order in which one's work is another's input.</summary>
public sealed class ServiceLoops
{
    private readonly JudgingPass _judging;
    private readonly RoundPass _rounds;
    private readonly OccasionPass _occasions;

    public ServiceLoops(
        JudgingPass judging, ForecastPass forecasts, RoundPass rounds, OccasionPass occasions, DeliveryPass deliveries, StatePass states,
        TimeProvider time, ILogger<Loop> logger)
    {
        _judging = judging;
        _rounds = rounds;
        _occasions = occasions;
        Judging = new Loop("judging", JudgeAsync, time, logger);
        Forecasts = new Loop("forecast", forecasts.RunAsync, time, logger);
        Rounds = new Loop("round", OpenRoundsAsync, time, logger);
        Occasions = new Loop("occasion", TellOccasionsAsync, time, logger);
        Deliveries = new Loop("delivery", (_, cancellationToken) => deliveries.RunAsync(cancellationToken), time, logger);
        States = new Loop("state", states.RunAsync, time, logger);
    }

    /// <summary>Judges what came in; wakes the forecasts when anything did.</summary>
    public Loop Judging { get; }

    /// <summary>Renews forecasts as quarter hours close and facts change.</summary>
    public Loop Forecasts { get; }

    /// <summary>Opens the round at the household's hour and asks again in the evening.</summary>
    public Loop Rounds { get; }

    /// <summary>Tells of what has come up.</summary>
    public Loop Occasions { get; }

    /// <summary>Delivers what is due in the outbox.</summary>
    public Loop Deliveries { get; }

    /// <summary>Publishes what has changed.</summary>
    public Loop States { get; }

    /// <summary>Each loop after those whose work it reads.</summary>
    public IReadOnlyList<Loop> InOrder => [Judging, Forecasts, Rounds, Occasions, Deliveries, States];

    /// <summary>Lets every loop run once, in order, and completes when the last has ended.</summary>
    public async Task SettleAsync(CancellationToken cancellationToken)
    {
        foreach (Loop loop in InOrder)
            await loop.WakeAndWaitAsync(cancellationToken);
    }

    private async Task OpenRoundsAsync(Instant now, CancellationToken cancellationToken)
    {
        await _rounds.RunAsync(now, cancellationToken);
        Deliveries.Wake();
    }

    private async Task TellOccasionsAsync(Instant now, CancellationToken cancellationToken)
    {
        if (await _occasions.RunAsync(now, cancellationToken) > 0)
            Deliveries.Wake();
    }

    private async Task JudgeAsync(Instant now, CancellationToken cancellationToken)
    {
        if (await _judging.RunAsync(cancellationToken) > 0)
            Forecasts.Wake();
    }
}
