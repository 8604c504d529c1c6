using System.Globalization;
using FermentWatch.Kitchen.Health;
using Microsoft.Extensions.Hosting.Systemd;

namespace FermentWatch.Service.Health;

/// <summary>
/// Tells systemd that the service is up, that it stops, and that it lives, twice in each span of its watchdog (sd_notify(3),
/// sd_watchdog_enabled(3)); stops telling it when a loop no longer runs: systemd then starts the service anew. Does nothing where nobody
/// listens. Goes by the socket alone: the framework's own question whether systemd is the parent is not answered within our unit's walls.
/// </summary>
public sealed class Watchdog(IHealth health, IHostApplicationLifetime lifetime, TimeProvider time) : BackgroundService
{
    private static readonly ServiceState Alive = new("WATCHDOG=1");

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var systemd = new SystemdNotifier();
        if (!systemd.IsEnabled)
            return;
        using CancellationTokenRegistration up = lifetime.ApplicationStarted.Register(() => systemd.Notify(ServiceState.Ready));
        using CancellationTokenRegistration ends = lifetime.ApplicationStopping.Register(() => systemd.Notify(ServiceState.Stopping));
        if (Span() is { } span)
            await BeatAsync(systemd, span, stoppingToken);
        else
            await Task.Delay(Timeout.InfiniteTimeSpan, time, stoppingToken);
    }

    private async Task BeatAsync(SystemdNotifier systemd, TimeSpan span, CancellationToken stoppingToken)
    {
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
        long.TryParse(Environment.GetEnvironmentVariable("WATCHDOG_USEC"), NumberStyles.None, CultureInfo.InvariantCulture, out long microseconds)
            && microseconds > 0
            ? TimeSpan.FromMicroseconds(microseconds) : null;
}
