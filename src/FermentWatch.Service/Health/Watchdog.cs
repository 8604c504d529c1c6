using System.Globalization;
using Microsoft.Extensions.Hosting.Systemd;

namespace FermentWatch.Service.Health;

/// <summary>
/// Tells systemd that the service lives, twice in each span of its watchdog (sd_watchdog_enabled(3)), and stops telling it when a
/// loop no longer runs: systemd then starts the service anew. Does nothing where nobody watches.
/// </summary>
public sealed class Watchdog(HealthReader health, IServiceProvider services, TimeProvider time) : BackgroundService
{
    private static readonly ServiceState Alive = new("WATCHDOG=1");

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (services.GetService<ISystemdNotifier>() is not { IsEnabled: true } systemd || Span() is not { } span)
            return;
        using var timer = new PeriodicTimer(span / 2, time);
        do
        {
            if (health.Read().IsLive)
                systemd.Notify(Alive);
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    /// <summary>The span systemd set, microseconds in <c>WATCHDOG_USEC</c>; null where there is none.</summary>
    private static TimeSpan? Span() =>
        long.TryParse(Environment.GetEnvironmentVariable("WATCHDOG_USEC"), NumberStyles.None, CultureInfo.InvariantCulture, out long microseconds) && microseconds > 0
            ? TimeSpan.FromMicroseconds(microseconds) : null;
}
