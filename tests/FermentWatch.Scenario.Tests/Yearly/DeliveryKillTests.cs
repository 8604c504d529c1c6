using System.Globalization;
using System.Net;
using System.Text.Json;
using FermentWatch.TestKit;
using NodaTime;
using Xunit.Abstractions;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Scenario.Tests.Yearly;

/// <summary>The product killed while it delivers the morning round, one kill a date.</summary>
public sealed class DeliveryKillTests(ITestOutputHelper output) : IAsyncLifetime, IDisposable
{
    private const string Topic = "kitchen/notices";
    private const int Seed = 20;
    private static readonly string[] _byWebhook = ["Mira", "Jonah", "Ada"];
    private static readonly LocalDate _first = new(2026, 10, 2);
    private static readonly Duration _minute = Duration.FromMinutes(1);
    private readonly TemporaryFolder _folder = new();
    private readonly Random _random = new(Seed);
    private KillMoment _moment = KillMoment.Never;
    private Receiver _receiver = null!;
    private Listener _listener = null!;
    private KitchenClient _mira = null!;
    private Host _host = null!;

    public async Task InitializeAsync()
    {
        _receiver = await Receiver.StartAsync(_ => _moment.AnswerAsync());
        _host = await Host.StartAsync(_folder.Path, At(_first.PlusDays(-1)) + Duration.FromHours(5));
        _listener = await Listener.StartAsync(_host, "tablet", Topic);
        _mira = await KitchenClient.SignInAsync(_host, "Mira");
        foreach (string person in _byWebhook)
            await PostAsync("/api/v1/notice-routes",
                new { person, channel = "Webhook", address = $"{_receiver.Address}/{person}", secret = "kitchen" });
        await PostAsync("/api/v1/notice-routes", new { person = "Tablet", channel = "Mqtt", address = Topic });
        await PostAsync("/api/v1/jars", new { what = "cabbage", how_much = "800g", salt = "2.25%", vessel = "1l", place = "cellar" });
    }

    [Fact]
    public async Task Kill_DuringDelivery_EachNoticeAtLeastOnceAndOnceByItsKey()
    {
        int kills = LongRun.Count(5, 100), underWay = 0;
        for (int i = 0; i < kills; i++)
            underWay += await KilledDateAsync(At(_first.PlusDays(i)), whileUnanswered: i % 2 == 0);

        await Patience.UntilAsync(() => Messages().Distinct().Count(IsRound) >= kills, "mosquitto_sub has heard of every date");
        await _mira.SignInAgainAsync();
        var notices = (await _mira.GetAsync("/api/v1/notices?atMost=1000")).EnumerateArray().ToList();
        var webhooks = _receiver.Got.Select(posted => posted.Id).ToList();
        var messages = Messages().ToList();
        Report(kills, underWay, notices.Count, webhooks, messages);
        // Besides the rounds, what has come up: a day without a reading, a tasting day.
        Assert.Equal(kills * (_byWebhook.Length + 1), notices.Count(notice => IsRound(notice.GetProperty("key").GetString()!)));
        Assert.All(notices, notice => Assert.Equal("Delivered", notice.GetProperty("state").GetString()));
        Assert.Equal(kills, messages.Distinct().Count(IsRound));
        Assert.Equal(notices.Select(notice => notice.GetProperty("key").GetString()).Order(), webhooks.Distinct().Concat(messages.Distinct())
            .Order());
        Assert.All(_receiver.Got.GroupBy(posted => posted.Id), same =>
            Assert.Single(same.Select(posted => posted.Body.GetProperty("text").GetString()).Distinct()));
        Assert.True(webhooks.Count > webhooks.Distinct().Count(), "no notice came twice: the kills did not fall into delivery");
    }

    public async Task DisposeAsync()
    {
        _mira.Dispose();
        await _host.DisposeAsync();
        _listener.Dispose();
        await _receiver.DisposeAsync();
    }

    public void Dispose() => _folder.Dispose();

    /// <summary>
    /// One date: killed at one of its webhooks, before that is answered or some milliseconds after, and started again. Returns how
    /// many webhooks were without an answer when it was killed.
    /// </summary>
    private async Task<int> KilledDateAsync(Instant due, bool whileUnanswered)
    {
        await _host.JumpAsync(due - _minute);
        _moment = new KillMoment(_random.Next(1, _byWebhook.Length + 1), whileUnanswered);
        Task moving = _host.JumpAsync(due);
        await _moment.Reached;
        if (!whileUnanswered)
            await Task.Delay(TimeSpan.FromMilliseconds(_random.Next(40)), TimeProvider.System);
        await _host.KillAsync();
        int unanswered = _moment.End();
        await moving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await _host.DisposeAsync();

        int before = _listener.Connections;
        _host = await Host.StartAsync(_folder.Path, due, "--web-port", Number(_host.Web.Port), "--mqtt-port", Number(_host.MqttPort));
        await Patience.UntilAsync(() => _listener.Connections > before, "mosquitto_sub is back");
        // What the killed process had claimed is free again after the claim's two minutes.
        for (Instant at = due; at <= due + (_minute * 3); at += _minute)
            await _host.JumpAsync(at);
        return unanswered;
    }

    private void Report(int kills, int underWay, int notices, List<string> webhooks, List<string> messages) =>
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{kills} kills, {underWay} webhooks without an answer at them; {notices} notices; ")
            + string.Create(CultureInfo.InvariantCulture,
            $"webhooks arrived {webhooks.Count}, repeats {webhooks.Count - webhooks.Distinct().Count()}; ")
            + string.Create(CultureInfo.InvariantCulture,
            $"messages arrived {messages.Count}, repeats {messages.Count - messages.Distinct().Count()}"));

    private IEnumerable<string> Messages() =>
        _listener.Payloads.Select(payload => JsonDocument.Parse(payload).RootElement.GetProperty("key").GetString()!);

    private static bool IsRound(string key) => key.StartsWith("round/", StringComparison.Ordinal);

    private async Task PostAsync(string path, object form)
    {
        (HttpStatusCode status, string body) = await _mira.PostAsync(path, form);
        Assert.True(status == HttpStatusCode.Created, body);
    }

    /// <summary>The round's hour of a date: seven o'clock UTC, which a new household has.</summary>
    private static Instant At(LocalDate date) => Instant.FromUtc(date.Year, date.Month, date.Day, 7, 0);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
