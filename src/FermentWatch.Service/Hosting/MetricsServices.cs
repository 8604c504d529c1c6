using System.Diagnostics.Metrics;
using FermentWatch.Service.Metrics;
using OpenTelemetry.Metrics;

namespace FermentWatch.Service.Hosting;

/// <summary>Figures for a collector. Where they are switched off nothing of it is there.</summary>
internal static class MetricsServices
{
    private const string Requests = "http.server.request.duration", Refused = "kestrel.rejected_connections";

    public static IServiceCollection AddMetricsPage(this IServiceCollection services, MetricsOptions options)
    {
        if (!options.Enabled)
            return services;
        services.AddSingleton<Backlog>();
        services.AddOpenTelemetry().WithMetrics(metrics => metrics
            .AddMeter(ServiceMeter.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel")
            .AddView(Kept)
            .AddPrometheusExporter(page =>
            {
                (page.TargetInfoEnabled, page.ScopeInfoEnabled) = (false, false);
                page.ScrapeResponseCacheDurationMilliseconds = 0;
            }));
        return services;
    }

    /// <summary>Of the framework's own: how requests were answered, by status alone, and connections that were too many.</summary>
    private static MetricStreamConfiguration? Kept(Instrument instrument) => instrument switch
    {
        { Meter.Name: ServiceMeter.Name } => null,
        { Name: Requests } => new ExplicitBucketHistogramConfiguration { Boundaries = [0.1, 1, 10], TagKeys = ["http.response.status_code"] },
        { Name: Refused } => new MetricStreamConfiguration { TagKeys = [] },
        _ => MetricStreamConfiguration.Drop,
    };
}
