using FermentWatch.Service.Loops;

namespace FermentWatch.Service.Pages.Entering;

/// <summary>After an entry: has the forecasts renewed before the next page shows them, but does not keep a person waiting for long.</summary>
public sealed class ForecastRenewal(ServiceLoops loops, TimeProvider clock)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>Completes when the forecasts are renewed, or when that takes too long; then a page says that they are being worked out.</summary>
    public async Task RunAsync()
    {
        try
        {
            loops.States.Wake();
            await loops.Forecasts.WakeAndWaitAsync(CancellationToken.None).WaitAsync(Patience, clock);
        }
        catch (TimeoutException)
        {
            // The loop goes on; what was entered is stored.
        }
        loops.Occasions.Wake();
    }
}
