using FermentWatch.Kitchen.Health;
using FermentWatch.Service.Health;
using FermentWatch.Service.Loops;

namespace FermentWatch.Service.Hosting;

/// <summary>The loops, hosted one by one so that each starts and stops with the service, and what tells how they stand.</summary>
internal static class LoopServices
{
    public static IServiceCollection AddLoops(this IServiceCollection services) => services
        .AddSingleton<ServiceLoops>()
        .AddSingleton<HealthReader>()
        .AddSingleton<IHealth>(provider => provider.GetRequiredService<HealthReader>())
        .AddHostedService<Watchdog>()
        .AddHostedService(provider => new HostedLoops(provider.GetRequiredService<ServiceLoops>().InOrder));

    private sealed class HostedLoops(IReadOnlyList<Loop> loops) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken) =>
            Task.WhenAll(loops.Select(loop => loop.StartAsync(cancellationToken)));

        public Task StopAsync(CancellationToken cancellationToken) =>
            Task.WhenAll(loops.Select(loop => loop.StopAsync(cancellationToken)));
    }
}
