using System.CommandLine;
using System.Net.Sockets;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.Demo;
using FermentWatch.Service.Hosting;
using FermentWatch.Service.Logging;
using FermentWatch.Storage;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>serve</c>: the service, until it is told to stop.</summary>
internal static class ServeVerb
{
    public static Command Create(CommandContext context)
    {
        var verb = new Command("serve", "Runs the service: broker, forecasts, pages.");
        var settings = new SettingsOptions(verb);
        verb.SetAction((call, cancellationToken) => settings.WithSettingsAsync(call, context, async (configuration, read) =>
        {
            try
            {
                await using WebApplication app = FermentWatchApp.Build(read, configuration, context.Clock);
                // In a terminal the signal says that the terminal was closed.
                using IDisposable? anew = context.IsTerminal ? null
                    : app.Services.GetRequiredService<LevelAnew>().Listen(() => settings.Gather(call, context).Reading);
                await RunAsync(app, cancellationToken);
                return ExitCode.Done;
            }
            catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
            {
                await context.Error.WriteLineAsync("Told to stop before the service was up.");
                return ExitCode.Done;
            }
            catch (Exception trouble) when (trouble is DatabaseRefusedException or IOException or UnauthorizedAccessException or SocketException)
            {
                // A database that is not ours, a folder that cannot be written, a port that is taken.
                await context.Error.WriteLineAsync(TakenPort.Words(trouble, read) ?? $"The service could not start: {trouble.Message}");
                return ExitCode.Failed;
            }
        }));
        return verb;
    }

    private static async Task RunAsync(WebApplication app, CancellationToken cancellationToken)
    {
        try
        {
            await app.StartAsync(cancellationToken);
        }
        catch
        {
            // What has started already ends in order, and not by what it needs being taken away.
            await app.StopAsync(CancellationToken.None);
            throw;
        }
        await app.WaitForShutdownAsync(cancellationToken);
    }
}

/// <summary><c>demo</c>: the service with an invented household.</summary>
internal static class DemoVerb
{
    public static Command Create(CommandContext context)
    {
        var port = new Option<string>("--port") { HelpName = "PORT",
            Description = "Port of the pages, on this machine only; a free one without it." };
        var verb = new Command("demo",
            "Runs the service on this machine only, with an invented household in a temporary folder: sensors that report, jars of several ages, "
            + "one of each trouble.") { port };
        verb.SetAction((call, cancellationToken) =>
        {
            var reader = new FieldReader();
            int asked = reader.ReadWhole("port", call.GetValue(port), 0, 0, 65_535);
            return reader.Refusals.Count > 0 ? Task.FromResult(context.Refuse(reader.Refusals))
                : new DemoRun(context, asked).RunAsync(cancellationToken);
        });
        return verb;
    }
}
