using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Judging;
using NodaTime;

namespace FermentWatch.Service.Loops;

/// <summary>The loops of the service, in the order in which one's work is another's input.</summary>
public sealed class ServiceLoops
{
    private readonly JudgingPass _judging;

    public ServiceLoops(JudgingPass judging, ForecastPass forecasts, TimeProvider time, ILogger<Loop> logger)
    {
        _judging = judging;
        Judging = new Loop("judging", JudgeAsync, time, logger);
        Forecasts = new Loop("forecast", forecasts.RunAsync, time, logger);
    }

    /// <summary>Judges what came in; wakes the forecasts when anything did.</summary>
    public Loop Judging { get; }

    /// <summary>Renews forecasts as quarter hours close and facts change.</summary>
    public Loop Forecasts { get; }

    /// <summary>Each loop after those whose work it reads.</summary>
    public IReadOnlyList<Loop> InOrder => [Judging, Forecasts];

    /// <summary>Lets every loop run once, in order, and completes when the last has ended.</summary>
    public async Task SettleAsync(CancellationToken cancellationToken)
    {
        foreach (Loop loop in InOrder)
            await loop.WakeAndWaitAsync(cancellationToken);
    }

    private async Task JudgeAsync(Instant now, CancellationToken cancellationToken)
    {
        if (await _judging.RunAsync(cancellationToken) > 0)
            Forecasts.Wake();
    }
}
