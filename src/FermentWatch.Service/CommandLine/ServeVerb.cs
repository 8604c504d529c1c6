using System.CommandLine;
using System.Net.Sockets;
using FermentWatch.Service.Hosting;
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
