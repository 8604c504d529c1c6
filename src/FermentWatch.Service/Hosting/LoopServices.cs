using FermentWatch.Kitchen.Health;
using FermentWatch.Service.Health;
using FermentWatch.Service.Loops;
using FermentWatch.Storage;
using FermentWatch.Storage.Backups;

namespace FermentWatch.Service.Hosting;

/// <summary>The loops, hosted one by one so that each starts and stops with the service, and what tells how they stand.</summary>
internal static class LoopServices
{
    public static IServiceCollection AddLoops(this IServiceCollection services, StorageOptions storage, BackupOptions backup) =>
        (backup.Folder is null ? services : services.AddSingleton(new DailyBackup(storage, backup)))
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
