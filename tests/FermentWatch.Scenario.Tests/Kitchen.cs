using System.Text.Json;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Scenario.Tests;

/// <summary>The rules on real databases, without doors; opened anew as often as a test likes.</summary>
internal sealed class Kitchen : IAsyncDisposable
{
    private readonly ServiceProvider _services;

    public Kitchen(string folder)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(TimeProvider.System);
        services.AddFermentWatchStorage(new StorageOptions { Folder = folder });
        services.AddSingleton<IClock>(TimeProvider.System.ToClock()).AddSingleton<SetAside>().AddSingleton<JudgingPass>()
            .AddSingleton<ForecastPass>();
        _services = services.BuildServiceProvider();
        _services.OpenStorage();
    }

    public IPlaceBook Places => _services.GetRequiredService<IPlaceBook>();

    public ISensorBook Sensors => _services.GetRequiredService<ISensorBook>();

    public IJarBook Jars => _services.GetRequiredService<IJarBook>();

    public IReadingIntake Intake => _services.GetRequiredService<IReadingIntake>();

    public IHouseholdBook Household => _services.GetRequiredService<IHouseholdBook>();

    /// <summary>Judges and forecasts as the loops would.</summary>
    public async Task PassAsync()
    {
        await _services.GetRequiredService<JudgingPass>().RunAsync(default);
        await _services.GetRequiredService<ForecastPass>().RunAsync(History.End, default);
    }

    /// <summary>The latest forecast to the last bit.</summary>
    public async Task<string> ForecastAsync() =>
        JsonSerializer.Serialize((await _services.GetRequiredService<IForecastBook>().LatestAsync(default)).Single().Forecast);

    public ValueTask DisposeAsync() => _services.DisposeAsync();
}
