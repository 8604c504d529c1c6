using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.States;
using FermentWatch.Service.Loops;

namespace FermentWatch.Service.Hosting;

/// <summary>The doors by which readings come in.</summary>
internal static class IntakeServices
{
    public static IServiceCollection AddIntake(this IServiceCollection services, BrokerOptions options)
    {
        services
            .AddSingleton(options)
            .AddSingleton(provider => new SensorDirectory(provider.GetRequiredService<ISensorBook>(), provider.GetRequiredService<TimeProvider>()))
            .AddSingleton(provider => new MessageDoor(
                new WakingIntake(provider.GetRequiredService<IReadingIntake>(), new Lazy<ServiceLoops>(provider.GetRequiredService<ServiceLoops>)),
                provider.GetRequiredService<SensorDirectory>(),
                rows: new RowsBeforeStart(provider.GetRequiredService<IReadingLog>(), provider.GetRequiredService<TimeProvider>())))
            .AddSingleton<Broker>()
            .AddSingleton<BrokerOutlet>()
            .AddSingleton<IMessageOutlet>(provider => provider.GetRequiredService<BrokerOutlet>());
        return options.Enabled ? services.AddHostedService<HostedBroker>() : services;
    }

    private sealed class HostedBroker(Broker broker, BrokerOutlet outlet, ServiceLoops loops) : IHostedService
    {
        public async Task StartAsync(CancellationToken cancellationToken)
        {
            await broker.StartAsync(cancellationToken);
            await outlet.SayOnlineAsync(cancellationToken);
            loops.States.Wake();
        }

        public async Task StopAsync(CancellationToken cancellationToken)
        {
            await outlet.SayOfflineAsync(cancellationToken);
            await broker.StopAsync(cancellationToken);
        }
    }
}
