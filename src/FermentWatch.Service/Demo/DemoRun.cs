using System.Globalization;
using FermentWatch.Intake.Embedded;
using FermentWatch.Kitchen.Households;
using FermentWatch.Service.CommandLine;
using FermentWatch.Service.CommandLine.Records;
using FermentWatch.Service.Demo.Gear;
using FermentWatch.Service.Demo.Household;
using FermentWatch.Service.Hosting;
using FermentWatch.Service.Loops;
using FermentWatch.Service.Settings;
using MQTTnet.Exceptions;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Demo;

/// <summary>The service on loopback with the invented household in a temporary folder.</summary>
internal sealed class DemoRun(CommandContext context, int port)
{
    private const string Loopback = "127.0.0.1";

    /// <summary>Runs until told to stop; the folder is deleted then.</summary>
    public async Task<int> RunAsync(CancellationToken cancellationToken)
    {
        using var folder = new TemporaryFolder();
        IConfiguration configuration = Configuration(folder.Path);
        ServiceSettings settings = ServiceSettings.Read(configuration).OrThrow();
        Instant now = context.Clock.GetUtcNow().ToInstant();
        MadeHousehold? made = null;
        var past = new PastClock();
        int prepared = await HouseholdRecords.WithAsync(settings, context with { Clock = past }, async records =>
        {
            made = await HouseholdMaker.In(records, past).MakeAsync(now, MachineZone.Of(context.Clock) ?? DateTimeZone.Utc, cancellationToken);
            return ExitCode.Done;
        });
        if (made is null)
            return prepared;
        await using WebApplication app = FermentWatchApp.Build(settings, configuration, context.Clock);
        try
        {
            await app.StartAsync(cancellationToken);
        }
        catch (IOException trouble) when (TakenPort.Words(trouble, settings, "--port ") is { } taken)
        {
            await app.StopAsync(CancellationToken.None);
            await context.Error.WriteLineAsync(taken);
            return ExitCode.Failed;
        }
        await LiveAsync(app, made, now, cancellationToken);
        await app.StopAsync(CancellationToken.None);
        return ExitCode.Done;
    }

    private async Task LiveAsync(WebApplication app, MadeHousehold made, Instant now, CancellationToken cancellationToken)
    {
        int brokerPort = app.Services.GetRequiredService<Broker>().Port
            ?? throw new InvalidOperationException("The broker of the demo did not start.");
        await using var devices = new DemoDevices(made.Sensors, Loopback, brokerPort, context.Clock);
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, app.Lifetime.ApplicationStopping);
        try
        {
            // The pages answer already; weeks of history take some seconds more.
            var news = new DemoNews(context.Output);
            news.SayOpen(new Uri(app.Urls.First()), brokerPort, made);
            int packs = await devices.SendHistoryAsync(now, ending.Token);
            await app.Services.GetRequiredService<ServiceLoops>().SettleAsync(ending.Token);
            news.SayHistory(packs, made.Sensors.Count);
            await devices.ReportAsync(ending.Token);
        }
        catch (Exception trouble) when (ending.IsCancellationRequested && trouble is (OperationCanceledException or MqttCommunicationException))
        {
            // Somebody ended it while the history was still coming in; the library calls a cancelled wait a timeout.
        }
    }

    private IConfiguration Configuration(string folder) => new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
    {
        ["Storage:Folder"] = Path.Combine(folder, "data"),
        ["Web:Address"] = Loopback,
        ["Web:Port"] = port.ToString(CultureInfo.InvariantCulture),
        ["Mqtt:BindAddress"] = Loopback,
        ["Mqtt:Port"] = "0",
        // What the demo says must not be lost among what the service logs.
        ["Log:Level"] = "Warning",
    }).Build();
}

/// <summary>A folder that is deleted with everything in it when it is disposed of.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    /// <summary>Its path.</summary>
    public string Path { get; } = Directory.CreateTempSubdirectory("fermentwatch-demo-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
