using System.CommandLine;
using FermentWatch.Acts;
using FermentWatch.Service.Hosting;
using FermentWatch.Service.Settings;
using FermentWatch.Storage;
using FermentWatch.Storage.Records;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.CommandLine.Records;

/// <summary>Opens the household's records for one verb, also while the service runs, and turns their refusals into lines.</summary>
internal static class HouseholdRecords
{
    /// <summary>Carries out a verb with the records open.</summary>
    public static async Task<int> WithAsync(ServiceSettings settings, CommandContext context, Func<IServiceProvider, Task<int>> action)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(context.Clock).AddSingleton<IClock>(context.Clock.ToClock());
        services.AddFermentWatchStorage(settings.Storage);
        services.AddKitchen();
        services.AddActs().AddSingleton<IForecastRenewal, RenewedByTheService>();
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

    /// <summary>What to say of a folder without records; null where there are some. Nothing is made by looking.</summary>
    public static string? NoneIn(StorageOptions storage) => storage.HasHousehold ? null
        : $"There is no household in {Path.GetFullPath(storage.Folder)}: no records.db. Name its folder by Storage:Folder "
            + "(FERMENTWATCH__STORAGE__FOLDER) or --settings.";

    /// <summary>A verb that needs the settings and the records.</summary>
    public static void SetAction(
        Command verb, CommandContext context, Func<ParseResult, IServiceProvider, ServiceSettings, CancellationToken, Task<int>> action) =>
        SetAction(verb, context, mayMake: false, action);

    /// <summary>The same; only a verb that adds something may make records where there are none.</summary>
    public static void SetAction(
        Command verb, CommandContext context, bool mayMake,
            Func<ParseResult, IServiceProvider, ServiceSettings, CancellationToken, Task<int>> action)
    {
        var options = new SettingsOptions(verb);
        verb.SetAction((call, cancellationToken) =>
            options.WithSettingsAsync(call, context, (_, settings) => !mayMake && NoneIn(settings.Storage) is { } none
            ? Task.FromResult(context.Fail(none)) : WithAsync(settings, context, provider => action(call, provider, settings, cancellationToken))));
    }
}
