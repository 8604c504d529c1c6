using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Service.CommandLine;
using FermentWatch.Service.CommandLine.Records;
using FermentWatch.Service.Demo.Household;
using FermentWatch.Service.Hosting;
using FermentWatch.Service.Settings;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace FermentWatch.Service.Tests.Health;

/// <summary>The invented household with weeks of records, a way to reach somebody, and rounds that have begun; made once, copied for each
/// test.</summary>
public sealed class FoundedHousehold : IAsyncLifetime
{
    public static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 12, 0);

    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-founded").FullName;

    public IReadOnlyList<Jar> Jars { get; private set; } = [];

    /// <summary>The service on a folder, built and not started.</summary>
    public static WebApplication Service(string folder, Instant now)
    {
        IConfiguration configuration = Configuration(folder);
        return FermentWatchApp.Build(ServiceSettings.Read(configuration).OrThrow(), configuration, new FakeTimeProvider(now.ToDateTimeOffset()));
    }

    /// <summary>A folder of its own with both files.</summary>
    public string Copy()
    {
        string copy = Directory.CreateTempSubdirectory("fermentwatch-copy").FullName;
        foreach (string file in Directory.GetFiles(_folder))
            File.Copy(file, Path.Combine(copy, Path.GetFileName(file)));
        return copy;
    }

    public async Task InitializeAsync()
    {
        var past = new PastClock();
        var context = new CommandContext { Output = TextWriter.Null, Error = TextWriter.Null, Clock = past };
        await HouseholdRecords.WithAsync(ServiceSettings.Read(Configuration(_folder)).OrThrow(), context, async records =>
        {
            await HouseholdMaker.In(records, past).MakeAsync(Now, DateTimeZone.Utc, CancellationToken.None);
            return ExitCode.Done;
        });
        await using WebApplication app = Service(_folder, Now);
        IServiceProvider services = app.Services;
        await services.GetRequiredService<INoticeBook>().AddRouteAsync(
            new NoticeRoute { Id = Guid.CreateVersion7(), Person = "Mira", Channel = Channel.Mqtt, Address = "mira" }, default);
        await services.GetRequiredService<ForecastPass>().RunAsync(Now - Duration.FromDays(2), default);
        await services.GetRequiredService<RoundPass>().RunAsync(Now - Duration.FromDays(2), default);
        await services.GetRequiredService<RoundPass>().RunAsync(Now, default);
        await services.GetRequiredService<OccasionPass>().RunAsync(Now, default);
        Jars = await services.GetRequiredService<IJarBook>().AllAsync(default);
    }

    public Task DisposeAsync()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
        return Task.CompletedTask;
    }

    private static IConfiguration Configuration(string folder) => new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
    {
        ["Storage:Folder"] = folder, ["Web:Port"] = "0", ["Mqtt:Enabled"] = "false", ["Serilog:MinimumLevel:Default"] = "Fatal",
    }).Build();
}
