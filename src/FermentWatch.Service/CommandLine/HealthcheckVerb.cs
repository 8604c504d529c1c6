using System.CommandLine;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>healthcheck</c>: asks the running service whether it does its work.</summary>
internal static class HealthcheckVerb
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static Command Create(CommandContext context)
    {
        var verb = new Command("healthcheck",
            "Asks the running service at its configured address whether every part does its work. Exit code 0 or 1.");
        var settings = new SettingsOptions(verb);
        verb.SetAction((call, cancellationToken) => settings.WithSettingsAsync(call, context,
            (_, read) => AskAsync(new Uri(read.Web.OwnUrl(), "healthz/ready"), context, cancellationToken)));
        return verb;
    }

    private static async Task<int> AskAsync(Uri address, CommandContext context, CancellationToken cancellationToken)
    {
        using var client = new HttpClient { Timeout = Patience };
        try
        {
            using HttpResponseMessage answer = await client.GetAsync(address, cancellationToken);
            if (answer.IsSuccessStatusCode)
            {
                await context.Output.WriteLineAsync($"{address}: every part does its work");
                return ExitCode.Done;
            }
            await context.Error.WriteLineAsync(
                $"{address} answered {(int)answer.StatusCode}: {await answer.Content.ReadAsStringAsync(cancellationToken)}");
        }
        catch (Exception trouble) when (trouble is HttpRequestException
            || (trouble is TaskCanceledException && !cancellationToken.IsCancellationRequested))
        {
            await context.Error.WriteLineAsync($"{address} did not answer: {trouble.Message}");
        }
        return ExitCode.Failed;
    }
}
