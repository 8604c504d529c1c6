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
        var verb = new Command("serve", "Runs the service: broker, forecasts, pages. This is what happens without a verb.");
        MakeDefault(verb, context);
        return verb;
    }

    /// <summary>Makes serving what a command does.</summary>
    public static void MakeDefault(Command command, CommandContext context)
    {
        var settings = new SettingsOptions(command);
        command.SetAction((call, cancellationToken) => settings.WithSettingsAsync(call, context, async (configuration, read) =>
        {
            try
            {
                await using WebApplication app = FermentWatchApp.Build(read, configuration, context.Clock);
                await ((IHost)app).RunAsync(cancellationToken);
                return ExitCode.Done;
            }
            catch (Exception trouble) when (trouble is DatabaseRefusedException or IOException or UnauthorizedAccessException or SocketException)
            {
                // A database that is not ours, a folder that cannot be written, a port that is taken.
                await context.Error.WriteLineAsync($"The service could not start: {trouble.Message}");
                return ExitCode.Failed;
            }
        }));
    }
}
