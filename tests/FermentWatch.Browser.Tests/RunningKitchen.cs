using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Service.Hosting;
using FermentWatch.Service.Loops;
using FermentWatch.Service.Settings;
using FermentWatch.Web.Accounts;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.RunningTests;

/// <summary>
/// The product itself on loopback with a folder of its own and a steered clock. It begins on a Wednesday morning, whatever day it is
/// outside: a test that holds on weekdays only, or not at midnight, must not find out later.
/// </summary>
public sealed class RunningKitchen : IAsyncDisposable
{
    private static readonly DateTimeOffset Begin = new(2026, 10, 14, 10, 0, 0, TimeSpan.Zero);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fermentwatch-pages-");
    private readonly WebApplication _app;

    private RunningKitchen(IReadOnlyList<(string Key, string Value)> changes)
    {
        Clock = new FakeTimeProvider(Begin);
        var settings = new Dictionary<string, string?>
        {
            ["Storage:Folder"] = _folder.FullName, ["Web:Port"] = "0", ["Mqtt:Enabled"] = "false", ["Serilog:MinimumLevel:Default"] = "Error",
        };
        foreach ((string key, string value) in changes)
            settings[key] = value;
        IConfiguration configuration = new ConfigurationBuilder().AddInMemoryCollection(settings).Build();
        _app = FermentWatchApp.Build(ServiceSettings.Read(configuration).Settings, configuration, Clock);
    }

    /// <summary>Where its databases are.</summary>
    public string Folder => _folder.FullName;

    public FakeTimeProvider Clock { get; }

    public Instant Now => Clock.GetUtcNow().ToInstant();

    public string Address => _app.Urls.First();

    public IServiceProvider Services => _app.Services;

    /// <summary>Starts one, with some settings changed.</summary>
    public static async Task<RunningKitchen> StartAsync(params (string Key, string Value)[] settings)
    {
        var kitchen = new RunningKitchen(settings);
        await kitchen._app.StartAsync();
        return kitchen;
    }

    /// <summary>Waits until every loop has run.</summary>
    public Task SettleAsync() => Services.GetRequiredService<ServiceLoops>().SettleAsync(CancellationToken.None);

    /// <summary>The address printed at first start.</summary>
    public async Task<string> SetUpAddressAsync() =>
        Address + await Services.GetRequiredService<SetUpToken>().PathAsync(CancellationToken.None);

    /// <summary>A sensor in a place with temperatures every quarter of an hour over the last days, one impossible value and one payload
    /// nobody can read.</summary>
    public async Task<Sensor> AddSensorAsync(string slug, Guid placeId, int days, Func<double, double> celsius)
    {
        var book = Services.GetRequiredService<ISensorBook>();
        Instant from = Now - Duration.FromDays(days);
        var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = slug, Name = slug.Replace('-', ' '), AddedAt = from };
        sensor.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = placeId, From = from });
        var credential = new MqttCredential { Id = Guid.CreateVersion7(), User = slug, PasswordHash = "-",
            TopicFilter = $"fermentwatch/sensor/{slug}/#", SensorId = sensor.Id };
        sensor = await book.AddAsync(sensor, credential, CancellationToken.None);
        var intake = Services.GetRequiredService<IReadingIntake>();
        var readings = Enumerable.Range(0, days * 96).Select(quarter =>
        {
            Instant at = Instant.FromUnixTimeSeconds((from + Duration.FromMinutes(15 * quarter)).ToUnixTimeSeconds());
            return new Reading(sensor.Key, Quantity.Temperature, celsius(quarter / 96.0), at, at + Duration.FromSeconds(1), TimeSource.Payload);
        }).ToList();
        Instant last = readings[^1].MeasuredAt;
        readings.Insert(readings.Count / 2,
            new Reading(sensor.Key, Quantity.Temperature, 85, readings[readings.Count / 2].MeasuredAt + Duration.FromMinutes(7), last,
            TimeSource.Payload));
        await intake.AppendAsync(readings, CancellationToken.None);
        await intake.RejectAsync(
            new Reject($"fermentwatch/sensor/{slug}/temperature", RejectReason.NotParseable, "19,4 grad", last, sensor.Key,
            "A number with a point would be right, such as 19.4."),
            CancellationToken.None);
        await SettleAsync();
        return sensor;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        _folder.Delete(recursive: true);
    }
}
