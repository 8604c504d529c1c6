using FermentWatch.Acts.Rounds;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Intake.Sources;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Service.Loops;

namespace FermentWatch.Service.Hosting;

/// <summary>The doors by which readings come in.</summary>
internal static class IntakeServices
{
    /// <param name="services">Where they are registered.</param>
    /// <param name="options">Our own broker.</param>
    /// <param name="outside">The household's broker.</param>
    /// <param name="door">What is let in.</param>
    public static IServiceCollection AddIntake(this IServiceCollection services, BrokerOptions options, OutsideBrokerOptions outside,
        DoorOptions door)
    {
        services
            .AddSingleton(options)
            .AddTransient(_ => BrokerAddresses.Of(options))
            .AddSingleton(outside)
            .AddSingleton(door)
            .AddSingleton<OfferBoard>()
            .AddSingleton<SensorDirectory>()
            .AddSingleton<SourceRuleSet>()
            .AddSingleton<IJarButtons, JarButtons>()
            .AddSingleton(Door)
            .AddSingleton<Broker>()
            .AddSingleton<OutsideLink>()
            .AddSingleton(provider => new BrokersOutlet(
                provider.GetRequiredService<Broker>(), options, outside.IsOn ? provider.GetRequiredService<OutsideLink>() : null))
            .AddSingleton<IMessageOutlet>(provider => provider.GetRequiredService<BrokersOutlet>());
        if (options.Enabled)
            services.AddHostedService<HostedBroker>();
        if (outside.IsOn)
            services.AddHostedService<HostedLink>();
        return services;
    }

    private static MessageDoor Door(IServiceProvider provider) => new(
        new TellingIntake(provider.GetRequiredService<IReadingIntake>(), provider.GetRequiredService<WrittenDown>()),
        provider.GetRequiredService<SensorDirectory>(),
        provider.GetRequiredService<SourceRuleSet>(),
        provider.GetRequiredService<IJarButtons>(),
        new RowsBeforeStart(provider.GetRequiredService<IReadingLog>(), provider.GetRequiredService<TimeProvider>()),
        provider.GetRequiredService<DoorOptions>(),
        provider.GetRequiredService<OfferBoard>());

    private sealed class HostedBroker(Broker broker, BrokersOutlet outlet, ServiceLoops loops) : IHostedService
    {
        public async Task StartAsync(CancellationToken cancellationToken)
        {
            await broker.StartAsync(cancellationToken);
            await outlet.SayOnlineAsync(cancellationToken);
            loops.States.Wake();
        }

        public async Task StopAsync(CancellationToken cancellationToken)
        {
            // It does not run where the service could not start.
            if (broker.IsRunning)
                await outlet.SayOfflineAsync(cancellationToken);
            await broker.StopAsync(cancellationToken);
        }
    }

    /// <summary>Starts the link and does not wait for it: an absent broker of others stops nothing.</summary>
    private sealed class HostedLink(OutsideLink link, StatePass states, AnnouncementPass announcements, ServiceLoops loops) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken)
        {
            link.Connected += () =>
            {
                states.SayAllAgain();
                announcements.SayAllAgain();
                loops.States.Wake();
            };
            return link.StartAsync(cancellationToken);
        }

        public Task StopAsync(CancellationToken cancellationToken) => link.StopAsync(cancellationToken);
    }
}
