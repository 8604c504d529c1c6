using System.CommandLine;
using FermentWatch.Service.Accounts;
using FermentWatch.Service.Settings;
using FermentWatch.Storage;
using FermentWatch.Storage.Records;

namespace FermentWatch.Service.CommandLine.Records;

/// <summary>Opens the household's records for one verb, also while the service runs, and turns their refusals into lines.</summary>
internal static class HouseholdRecords
{
    /// <summary>Carries out a verb with the records open.</summary>
    public static async Task<int> WithAsync(ServiceSettings settings, CommandContext context, Func<IServiceProvider, Task<int>> action)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(context.Clock);
        services.AddFermentWatchStorage(settings.Storage);
        services.AddAccounts();
        await using ServiceProvider provider = services.BuildServiceProvider();
        try
        {
            provider.OpenStorage();
            await using AsyncServiceScope scope = provider.CreateAsyncScope();
            return await action(scope.ServiceProvider);
        }
        catch (NameTakenException taken)
        {
            await context.Error.WriteLineAsync(taken.Message);
            return ExitCode.WrongCall;
        }
        catch (Exception trouble) when (trouble is DatabaseRefusedException or IOException or UnauthorizedAccessException)
        {
            await context.Error.WriteLineAsync(trouble.Message);
            return ExitCode.Failed;
        }
    }

    /// <summary>A verb that needs the settings and the records.</summary>
    public static void SetAction(
        Command verb, CommandContext context, Func<ParseResult, IServiceProvider, ServiceSettings, CancellationToken, Task<int>> action)
    {
        var options = new SettingsOptions(verb);
        verb.SetAction((call, cancellationToken) => options.WithSettingsAsync(call, context, (_, settings) =>
            WithAsync(settings, context, provider => action(call, provider, settings, cancellationToken))));
    }
}
