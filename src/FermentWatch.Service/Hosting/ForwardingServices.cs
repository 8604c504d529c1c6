using FermentWatch.Export;
using FermentWatch.Export.Estimates;
using FermentWatch.Export.Forwarding;
using FermentWatch.Export.Points;
using FermentWatch.Export.Receiving;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Service.Loops;
using NodaTime;

namespace FermentWatch.Service.Hosting;

/// <summary>Passing series on. Without an address nothing of it is there.</summary>
internal static class ForwardingServices
{
    public static IServiceCollection AddForwarding(this IServiceCollection services, InfluxOptions options) =>
        !options.Enabled ? services.AddSingleton(options) : services
        .AddSingleton(options)
        .AddSingleton<OwnerReader>()
        .AddSingleton<EstimateNotes>()
        .AddSingleton<IPointReceiver>(_ => new InfluxReceiver(options))
        .AddSingleton<Series>(provider => Of<Reading>(
            provider, SeriesKind.Reading, provider.GetRequiredService<IForwardLog<Reading>>(), (reading, names) =>
                SeriesPoints.Of(reading, names, options.Site)))
        .AddSingleton<Series>(provider => Of<SavedEstimate>(
            provider, SeriesKind.Estimate, provider.GetRequiredService<IEstimateLog>(), (estimate, names) =>
                SeriesPoints.Of(estimate, names, options.Site)))
        .AddSingleton<Series>(provider => Of<LoggedObservation>(
            provider, SeriesKind.Observation, provider.GetRequiredService<IForwardLog<LoggedObservation>>(), (observation, names) =>
                SeriesPoints.Of(observation, names, options.Site)))
        .AddSingleton(provider => new Forwarder(
            provider.GetServices<Series>(), provider.GetRequiredService<IForwardCursors>(), provider.GetRequiredService<IPointReceiver>(),
            options.SettleTime, provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<IClock>(),
                provider.GetRequiredService<ILogger<Forwarder>>()))
        .AddSingleton<SeriesForwarding>()
        .AddSingleton<IForwardingState>(provider => provider.GetRequiredService<SeriesForwarding>());

    private static LogSeries<T> Of<T>(
        IServiceProvider provider, SeriesKind kind, IForwardLog<T> log, Func<T, OwnerNames, InfluxDB.Client.Writes.PointData?> point)
        where T : class =>
        new(kind, log, point, provider.GetRequiredService<OwnerReader>(), provider.GetRequiredService<IClock>());
}
