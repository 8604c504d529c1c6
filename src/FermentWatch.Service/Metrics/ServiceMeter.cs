using System.Diagnostics.Metrics;
using FermentWatch.Export;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Service.Loops;
using FermentWatch.Storage;
using NodaTime;

namespace FermentWatch.Service.Metrics;

/// <summary>Our meter, with every instrument on it. It counts nothing itself: each room keeps its own counts.</summary>
internal static class ServiceMeter
{
    public const string Name = "FermentWatch";

    /// <summary>Makes the meter; the factory keeps it.</summary>
    public static void Make(IServiceProvider services)
    {
        Meter meter = services.GetRequiredService<IMeterFactory>().Create(Name);
        meter.AddDoor(services.GetRequiredService<MessageDoor>().Counts);
        if (services.GetRequiredService<BrokerOptions>().Enabled)
            meter.AddBroker(services.GetRequiredService<Broker>());
        if (services.GetRequiredService<OutsideBrokerOptions>().IsOn)
            meter.AddLink(services.GetRequiredService<OutsideLink>());
        meter.AddLoops(services.GetRequiredService<ServiceLoops>().InOrder, services.GetRequiredService<IClock>());
        meter.AddWork(services.GetRequiredService<ForecastPass>().Counts, services.GetRequiredService<DeliveryPass>().Counts,
            services.GetRequiredService<SetAside>());
        meter.AddBacklog(services.GetRequiredService<Backlog>(), services.GetRequiredService<InfluxOptions>().Enabled);
        meter.AddDisk(services.GetRequiredService<DiskRoom>());
    }
}
