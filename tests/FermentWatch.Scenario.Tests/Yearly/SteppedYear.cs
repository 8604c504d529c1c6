using System.Globalization;
using System.Net;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Storage;
using FermentWatch.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Scenario.Tests.Yearly;

/// <summary>A household with one jar in one zone, stepped from date to date, with restarts and kills at random moments.</summary>
internal sealed class SteppedYear : IAsyncDisposable
{
    private const string Topic = "kitchen/notices";
    private static readonly LocalTime _evening = new(19, 0);
    private static readonly Duration _minute = Duration.FromMinutes(1);

    /// <summary>What a killed process had claimed is tried again after the claim's two minutes.</summary>
    private static readonly Duration _claim = Duration.FromMinutes(3);

    /// <summary>On a date of change every timer runs until the repeated hour is over.</summary>
    private static readonly Duration _pastTheFold = Duration.FromMinutes(100);

    private readonly TemporaryFolder _folder = new();
    private readonly ZoneTable _zone;
    private readonly LocalTime _time;
    private readonly double _restartsADay;
    private readonly Random _random;
    private readonly List<LocalDate> _dates = [];
    private Receiver _receiver = null!;
    private Listener _listener = null!;
    private KitchenClient _mira = null!;
    private Host _host = null!;
    private Instant _now;
    private int _jar;

    private SteppedYear(ZoneTable zone, LocalTime time, double restartsADay, int seed) =>
        (_zone, _time, _restartsADay, _random) = (zone, time, restartsADay, new Random(seed));

    public int Stops { get; private set; }

    public int Kills { get; private set; }

    public int Steps { get; private set; }

    /// <summary>What the steps took of the processors together.</summary>
    public TimeSpan StepTime { get; private set; }

    /// <summary>What the starts after a stop or kill took of the processors together.</summary>
    public TimeSpan StartTime { get; private set; }

    /// <summary>Dates that were stepped through; each had its round.</summary>
    public IReadOnlyList<LocalDate> Dates => _dates;

    /// <summary>Sets the household up two days before the first date, so that the first date is a day like any other.</summary>
    public static async Task<SteppedYear> StartAsync(ZoneTable zone, LocalTime time, LocalDate first, double restartsADay, int seed)
    {
        var year = new SteppedYear(zone, time, restartsADay, seed) { _now = zone.At(first.PlusDays(-2), new LocalTime(12, 0))!.Value };
        year._receiver = await Receiver.StartAsync();
        year._host = await Host.StartAsync(year._folder.Path, year._now);
        year._listener = await Listener.StartAsync(year._host, "tablet", Topic);
        year._mira = await KitchenClient.SignInAsync(year._host, "Mira");
        Assert.Equal(HttpStatusCode.OK, (await year._mira.PutAsync("/api/v1/household", new
        {
            name = "Number Nine", time_zone = zone.Name, round_at = Clock(time), evening_at = Clock(_evening),
        })).Status);
        foreach (object route in (object[])[
            new { person = "Mira", channel = "Webhook", address = year._receiver.Address, secret = "kitchen" },
            new { person = "Jonah", channel = "Mqtt", address = Topic }])
            await year.PostAsync(HttpStatusCode.Created, "/api/v1/notice-routes", route);
        await year.NextJarAsync();
        await year.ToAsync(zone.At(first.PlusDays(-1), new LocalTime(23, 0))!.Value);
        return year;
    }

    /// <summary>The jar is finished, and the next one stands in its place.</summary>
    public async Task NextJarAsync()
    {
        await _mira.SignInAgainAsync();
        await PostAsync(HttpStatusCode.Created, "/api/v1/jars",
            new { what = "cabbage", how_much = "800g", salt = "2.25%", vessel = "1l", place = "cellar" });
        if (_jar++ > 0)
            await PostAsync(HttpStatusCode.OK, "/api/v1/round/today/stage", new { jar = _jar - 1, what = "Finished" });
    }

    /// <summary>One date: nothing a minute before the promised time, one round at it, nothing more until its end.</summary>
    public async Task DayAsync(LocalDate date)
    {
        if (_zone.At(date, _time) is not { } due)
            return;
        _dates.Add(date);
        await ToAsync(due - _minute);
        await PerhapsRestartAsync();
        Assert.Empty(Rounds(date));
        if (Falls(_restartsADay / 3))
            await KillAtAsync(due);
        else
            await ToAsync(due);
        await AssertToldAsync(date, due);
        if (_zone.DatesOfChange().Contains(date))
            await _host.ToAsync(due + _pastTheFold);
        await PerhapsRestartAsync();
        await ToAsync(_zone.At(date, _evening)!.Value);
        await PerhapsRestartAsync();
        await AssertOnceAsync($"evening/{Text(date)}/");
        await AssertOnceAsync($"round/{Text(date)}/");
    }

    /// <summary>Every key of an occasion that came by webhook since the first date, with how often it came.</summary>
    public IReadOnlyDictionary<string, int> Webhooks(string occasion) => Count(_receiver.Got.Select(posted => posted.Id), occasion);

    /// <summary>The same by mosquitto_sub.</summary>
    public IReadOnlyDictionary<string, int> Messages(string occasion) => Count(_listener.Payloads.Select(Key), occasion);

    /// <summary>Ends the host and reads the rounds it kept.</summary>
    public async Task<IReadOnlyList<Round>> StoredRoundsAsync()
    {
        await _host.DisposeAsync();
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(TimeProvider.System);
        services.AddFermentWatchStorage(new StorageOptions { Folder = _folder.Path });
        await using ServiceProvider provider = services.BuildServiceProvider();
        provider.OpenStorage();
        return await provider.GetRequiredService<IRoundBook>().SinceAsync(_dates[0], default);
    }

    public async ValueTask DisposeAsync()
    {
        _mira.Dispose();
        await _host.DisposeAsync();
        _listener.Dispose();
        await _receiver.DisposeAsync();
        _folder.Dispose();
    }

    private async Task ToAsync(Instant instant)
    {
        TimeSpan before = _host.ProcessorTime;
        await _host.JumpAsync(instant);
        StepTime += _host.ProcessorTime - before;
        _now = instant;
        Steps++;
    }

    private async Task PostAsync(HttpStatusCode expected, string path, object form)
    {
        (HttpStatusCode status, string body) = await _mira.PostAsync(path, form);
        Assert.True(status == expected, body);
    }

    private async Task PerhapsRestartAsync()
    {
        if (!Falls(_restartsADay / 3))
            return;
        if (_random.Next(2) == 0)
            await StopAsync();
        else
            await KillAsync();
        await StartAgainAsync(_now);
    }

    /// <summary>Killed while it opens the round or delivers it, and started again at the same moment.</summary>
    private async Task KillAtAsync(Instant due)
    {
        Task moving = _host.JumpAsync(due);
        await Task.Delay(TimeSpan.FromMilliseconds(_random.Next(80)), TimeProvider.System);
        await KillAsync();
        await moving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await StartAgainAsync(due);
        for (Instant at = due; at <= due + _claim; at += _minute)
            await ToAsync(at);
    }

    private async Task StopAsync()
    {
        Stops++;
        await _host.DisposeAsync();
    }

    private async Task KillAsync()
    {
        Kills++;
        await _host.KillAsync();
        await _host.DisposeAsync();
    }

    private async Task StartAgainAsync(Instant at)
    {
        int before = _listener.Connections;
        _host = await Host.StartAsync(_folder.Path, at, "--web-port", Number(_host.Web.Port), "--mqtt-port", Number(_host.MqttPort));
        StartTime += _host.ProcessorTime;
        _now = at;
        await Patience.UntilAsync(() => _listener.Connections > before, "mosquitto_sub is back");
    }

    private async Task AssertToldAsync(LocalDate date, Instant due)
    {
        await AssertOnceAsync($"round/{Text(date)}/");
        IReadOnlyList<Posted> posted = Rounds(date);
        Assert.All(posted, each => Assert.Equal(due.ToString(), each.Body.GetProperty("dueAt").GetString()));
        Assert.Equal(date, _zone.Local(posted[0].SentAt).Date);
        // Where the process was killed in between, the claim it held must first end.
        Duration after = posted[0].SentAt - due;
        Assert.True(after == Duration.Zero || (posted[0].SentAt == _now && after <= _claim)
            || (Kills > 0 && after <= _claim), $"{date}: {after} after the promised time");
    }

    private async Task AssertOnceAsync(string occasion)
    {
        Assert.Single(Webhooks(occasion));
        await Patience.UntilAsync(() => Messages(occasion).Count > 0, $"mosquitto_sub hears {occasion}");
        Assert.Single(Messages(occasion));
    }

    private Dictionary<string, int> Count(IEnumerable<string> keys, string occasion) =>
        keys.Where(key => key.StartsWith(occasion, StringComparison.Ordinal) && string.CompareOrdinal(key.Split('/')[1], Text(_dates[0])) >= 0)
            .CountBy(key => key).ToDictionary();

    private IReadOnlyList<Posted> Rounds(LocalDate date) =>
        [.. _receiver.Got.Where(posted => posted.Id.StartsWith($"round/{Text(date)}/", StringComparison.Ordinal))];

    private bool Falls(double chance) => _random.NextDouble() < chance;

    private static string Key(string payload) => System.Text.Json.JsonDocument.Parse(payload).RootElement.GetProperty("key").GetString()!;

    private static string Clock(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string Text(LocalDate date) => date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
