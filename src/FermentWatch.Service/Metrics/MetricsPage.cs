using System.Net;
using FermentWatch.Export;
using Microsoft.AspNetCore.HttpOverrides;

namespace FermentWatch.Service.Metrics;

/// <summary>The page a collector reads. It asks for no sign-in, and is for this machine unless the settings open it.</summary>
internal static class MetricsPage
{
    private const string Path = "/metrics";

    public static WebApplication MapMetrics(this WebApplication app, MetricsOptions options)
    {
        if (!options.Enabled)
            return app;
        ServiceMeter.Make(app.Services);
        Backlog backlog = app.Services.GetRequiredService<Backlog>();
        bool forwards = app.Services.GetRequiredService<InfluxOptions>().Enabled;
        app.MapPrometheusScrapingEndpoint(Path, meterProvider: null, page => page.Use(ReadOrRefuseAsync), optionsName: null)
            .AllowAnonymous().DisableHttpMetrics();
        return app;

        async Task ReadOrRefuseAsync(HttpContext context, RequestDelegate next)
        {
            if (!options.OpenToNetwork && !IsOfThisMachine(context))
            {
                await RefuseAsync(context);
                return;
            }
            await backlog.ReadAsync(forwards, context.RequestAborted);
            await next(context);
        }
    }

    /// <summary>A proxy on this machine that is not trusted speaks for anybody; what a trusted one forwarded was taken off the request.</summary>
    private static bool IsOfThisMachine(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } caller && IPAddress.IsLoopback(caller)
            && !context.Request.Headers.ContainsKey(ForwardedHeadersDefaults.XForwardedForHeaderName);

    private static Task RefuseAsync(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync("These figures are for this machine only; the setting Metrics:OpenToNetwork=true opens them.");
    }
}
