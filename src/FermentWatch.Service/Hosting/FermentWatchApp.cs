using FermentWatch.Service.Logging;
using FermentWatch.Service.Metrics;
using FermentWatch.Service.Settings;
using FermentWatch.Storage;
using FermentWatch.Web;
using FermentWatch.Web.Accounts;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Hosting;

/// <summary>The product's composition root, with the clock as its only outside choice.</summary>
public static class FermentWatchApp
{
    private const int MostConnections = 500;

    /// <summary>Builds the service, not yet started, and opens its databases.</summary>
    /// <param name="settings">Settings without errors.</param>
    /// <param name="configuration">The same settings, for the host's own sections.</param>
    /// <param name="time">The only clock.</param>
    /// <exception cref="DatabaseRefusedException">A database is foreign, half-written or from a newer version.</exception>
    /// <exception cref="IOException">The folder cannot be read or written.</exception>
    public static WebApplication Build(ServiceSettings settings, IConfiguration configuration, TimeProvider time)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.AddConfiguration(configuration);
        builder.WebHost.UseUrls(settings.Web.ListenUrl().ToString());
        builder.WebHost.UseKestrelHttpsConfiguration();
        // Open connections are open files; a process that has none left does not live on.
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Limits.MaxConcurrentConnections = MostConnections);
        builder.Services.AddServiceLog(settings.Log, configuration);
        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton<IClock>(time.ToClock());
        builder.Services.AddFermentWatchStorage(settings.Storage);
        builder.Services.AddSingleton(new RecordsFolder(Path.GetFullPath(settings.Storage.Folder)));
        builder.Services.AddSingleton(settings.HomeHub);
        builder.Services.AddKitchen();
        builder.Services.AddForwarding(settings.Influx);
        builder.Services.AddLoops(settings.Storage, settings.Backup);
        builder.Services.AddNotices(settings.Mail, settings.Web);
        builder.Services.AddIntake(settings.Mqtt, settings.OutsideBroker, settings.Intake);
        builder.Services.AddActsOfTheService();
        builder.Services.AddFermentWatchWeb();
        builder.Services.AddMetricsPage(settings.Metrics);

        builder.Services.AddSingleton(_ => ServedFolder.Take(settings.Storage));

        WebApplication app = builder.Build();
        try
        {
            app.Services.GetRequiredService<ServedFolder>();
            app.Services.OpenStorage(asService: true);
            return app.MapFermentWatchWeb().MapMetrics(settings.Metrics);
        }
        catch
        {
            // Whoever called has nothing to dispose of yet, and the folder must be free again.
            ((IDisposable)app).Dispose();
            throw;
        }
    }
}
