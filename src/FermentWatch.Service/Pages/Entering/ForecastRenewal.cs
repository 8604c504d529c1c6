using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Service.Loops;
using NodaTime.Extensions;

namespace FermentWatch.Service.Pages.Entering;

/// <summary>
/// After an entry: has the forecasts of the jars it is about renewed before the next page shows them. What follows for others, and
/// what is told to anybody, is the loops' and is not waited for.
/// </summary>
public sealed class ForecastRenewal(ForecastPass forecasts, IJarBook jars, ServiceLoops loops, TimeProvider clock)
{
    /// <summary>Renews these jars.</summary>
    public async Task RunAsync(IReadOnlyCollection<Jar> touched, CancellationToken cancellationToken)
    {
        if (touched.Count > 0)
            await forecasts.RenewAsync(touched, clock.GetUtcNow().ToInstant(), cancellationToken);
        WakeLoops();
    }

    /// <summary>Renews one jar as it stands after the entry.</summary>
    public async Task RunAsync(int number, CancellationToken cancellationToken) =>
        await RunAsync(await jars.FindAsync(number, cancellationToken) is { } jar ? [jar] : [], cancellationToken);

    /// <summary>For an entry that may touch every jar, such as a place that is warmer than was thought.</summary>
    public void WakeLoops()
    {
        loops.Forecasts.Wake();
        loops.States.Wake();
        loops.Occasions.Wake();
    }
}
