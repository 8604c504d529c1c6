using System.Net;
using System.Text.Json;
using FermentWatch.TestKit;
using NodaTime;

namespace FermentWatch.Export.Tests.Scrapes;

/// <summary>The page for a collector, read from the product in a process of its own.</summary>
public class ScrapeTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 4, 12, 0);

    /// <summary>Gauges that count things; every other is in a base unit, and says so at its end.</summary>
    private static readonly string[] CountsOfThings =
    [
        "fermentwatch_broker_clients", "fermentwatch_forwarding_waiting", "fermentwatch_link_connected", "fermentwatch_notice_waiting",
        "fermentwatch_set_aside",
    ];

    private static readonly string[] BaseUnits = ["_seconds", "_bytes", "_ratio", "_celsius"];

    [Fact]
    public async Task Scrape_OfEverythingSwitchedOn_KeepsToTextFormAndBaseUnits()
    {
        await using ScrapedHost scraped = await ScrapedHost.StartAsync(Start, new
        {
            Metrics = new { Enabled = true },
            Influx = new { Address = "http://127.0.0.1:9", Token = "any", Org = "home", Bucket = "kitchen" },
            OutsideBroker = new { Host = "127.0.0.1", Port = 9 },
        });
        await scraped.GetAsync("/healthz/live");
        IReadOnlyList<Family> families = TextForm.Read(await scraped.ScrapeAsync());
        Assert.All(families, family => Assert.True(family.Kind switch
        {
            "counter" => family.Name.EndsWith("_total", StringComparison.Ordinal),
            "histogram" => family.Name.EndsWith("_seconds", StringComparison.Ordinal),
            _ => CountsOfThings.Contains(family.Name) || BaseUnits.Any(unit => family.Name.EndsWith(unit, StringComparison.Ordinal)),
        }, family.Name));
        Assert.Equal(CountsOfThings, CountsOfThings.Intersect(families.Select(family => family.Name)));
        Assert.Equal(
            ["broker", "database", "disk", "forecast", "forwarding", "intake", "link", "loop", "notice", "set"],
            families.Where(family => family.Name.StartsWith("fermentwatch_", StringComparison.Ordinal))
                .Select(family => family.Name.Split('_')[1]).Distinct().Order(StringComparer.Ordinal));
        Assert.Contains(families, family => family.Name == "http_server_request_duration_seconds");
        // Labels hold words of ours alone: nothing that a household may name makes a series.
        Assert.InRange(families.Sum(family => family.Samples.Count), 50, 150);
    }

    [Fact]
    public async Task Scrape_AfterThreeReadingsAndOneRefused_SaysExactlyThat()
    {
        await using ScrapedHost scraped = await ScrapedHost.StartAsync(Start, new
        {
            Metrics = new { Enabled = true }, Influx = new { Address = "http://127.0.0.1:9", Token = "any", Org = "home", Bucket = "kitchen" },
        });
        Device device = await Device.AddAsync(scraped.Host, "counter");
        Assert.Equal((0, ""), await device.SendPackAsync([.. Enumerable.Range(1, 3).Select(minute => (Start - Duration.FromMinutes(minute), 20.5))]));
        Assert.Equal((0, ""), await Mosquitto.PublishAsync(
            scraped.Host.MqttPort, device.User, device.Password, $"fermentwatch/sensor/{device.User}/temperature", "warm"));
        (int refused, _) = await Mosquitto.PublishAsync(
            scraped.Host.MqttPort, device.User, "a guess", $"fermentwatch/sensor/{device.User}/temperature", "1");
        Assert.NotEqual(0, refused);
        Assert.Equal(HttpStatusCode.BadRequest, (await scraped.GetAsync("/", ("Host", "kitchen.elsewhere.example"))).Status);
        await scraped.Host.ToAsync(Start + Duration.FromSeconds(90));

        IReadOnlyDictionary<string, double> figures = await scraped.FiguresAsync();

        Assert.Equal(2, figures["fermentwatch_intake_messages_total"]);
        Assert.Equal(3, figures["fermentwatch_intake_readings_total"]);
        Assert.Equal([("not_parseable", 1)], OtherThanZero(figures, "fermentwatch_intake_refused_total{reason="));
        Assert.Equal([("bad_credentials", 1)], OtherThanZero(figures, "fermentwatch_broker_refused_total{reason="));
        Assert.Equal(1, figures["http_server_request_duration_seconds_count{http_response_status_code=\"400\"}"]);
        Assert.Equal([("reading", 3)], OtherThanZero(figures, "fermentwatch_forwarding_waiting{series="));
        Assert.Equal([("reading", 90)], OtherThanZero(figures, "fermentwatch_forwarding_oldest_seconds{series="));
        Assert.Equal([], OtherThanZero(figures, "fermentwatch_loop_failures_total{loop="));
        Assert.Equal([], OtherThanZero(figures, "fermentwatch_loop_lag_seconds{loop="));
        Assert.Equal(0, figures["fermentwatch_forecast_computed_total"]);
        foreach (string database in (string[])["readings", "records"])
            Assert.Equal(scraped.BytesOf($"{database}.db"), figures[$"fermentwatch_database_size_bytes{{database=\"{database}\"}}"]);
    }

    [Fact]
    public async Task Scrape_AfterNoticesNobodyTakes_SaysAttemptsForecastsAndWhatWaits()
    {
        await using ScrapedHost scraped = await ScrapedHost.StartAsync(Start, new
        {
            Metrics = new { Enabled = true }, Influx = new { Address = "http://127.0.0.1:9", Token = "any", Org = "home", Bucket = "kitchen" },
        });
        using KitchenClient mira = await KitchenClient.SignInAsync(scraped.Host, "Mira");
        await mira.PostAsync("/api/v1/jars", new { what = "cabbage", how_much = "800g", salt = "2.25%", vessel = "1l", place = "kitchen counter" });
        Assert.Equal(1, (await scraped.FiguresAsync())["fermentwatch_forecast_computed_total"]);
        Assert.Equal(HttpStatusCode.Created, (await mira.PostAsync("/api/v1/jars/1/ph", new { ph = "5.9", method = "meter" })).Status);
        Assert.Equal(HttpStatusCode.Created,
            (await mira.PostAsync("/api/v1/notice-routes", new { person = "Mira", channel = "Mqtt", address = "fermentwatch/mira" })).Status);
        await scraped.Host.JumpAsync(Start + Duration.FromHours(22));
        await scraped.Host.ToAsync(Start + Duration.FromHours(22) + Duration.FromMinutes(3));

        IReadOnlyDictionary<string, double> figures = await scraped.FiguresAsync();

        JsonElement[] notices = [.. (await mira.GetAsync("/api/v1/notices")).EnumerateArray()];
        Assert.NotEmpty(notices);
        Assert.All(notices, notice => Assert.Equal("Queued", notice.GetProperty("state").GetString()));
        Assert.Equal([("mqtt", notices.Length)], OtherThanZero(figures, "fermentwatch_notice_waiting{channel="));
        Assert.Equal([("mqtt\",left=\"queued", notices.Sum(notice => notice.GetProperty("attempts").GetInt32()))],
            OtherThanZero(figures, "fermentwatch_notice_attempts_total{channel="));
        Assert.Equal(1, figures["fermentwatch_forwarding_waiting{series=\"observation\"}"]);
        Assert.Equal((22 * 3600) + 180, figures["fermentwatch_forwarding_oldest_seconds{series=\"observation\"}"]);
        Assert.True(figures["fermentwatch_forwarding_waiting{series=\"estimate\"}"] > 0);
        Assert.True(figures["fermentwatch_forecast_duration_seconds_total"] > 0);
    }

    [Fact]
    public async Task Page_NotSwitchedOn_IsNotThere()
    {
        await using ScrapedHost scraped = await ScrapedHost.StartAsync(Start, new { });
        Assert.Equal(HttpStatusCode.Found, (await scraped.GetAsync("/metrics")).Status);
    }

    [Theory]
    [InlineData(false, "", null, HttpStatusCode.OK)]
    [InlineData(false, "", "192.0.2.7", HttpStatusCode.Forbidden)]
    [InlineData(false, "127.0.0.1", "192.0.2.7", HttpStatusCode.Forbidden)]
    [InlineData(false, "127.0.0.1", "127.0.0.1", HttpStatusCode.OK)]
    [InlineData(true, "", "192.0.2.7", HttpStatusCode.OK)]
    [InlineData(true, "127.0.0.1", "192.0.2.7", HttpStatusCode.OK)]
    public async Task Page_ForCallers_IsForThisMachineUnlessOpened(bool open, string proxies, string? forwardedFor, HttpStatusCode expected)
    {
        await using ScrapedHost scraped = await ScrapedHost.StartAsync(Start, new
        {
            Metrics = new { Enabled = true, OpenToNetwork = open }, Web = new { TrustedProxies = proxies },
        });
        (string, string)[] headers = forwardedFor is null ? [] : [("X-Forwarded-For", forwardedFor)];
        Assert.Equal(expected, (await scraped.GetAsync("/metrics", headers)).Status);
    }

    private static IEnumerable<(string Label, double Value)> OtherThanZero(IReadOnlyDictionary<string, double> figures, string series)
    {
        (string Label, double Value)[] all = [.. figures.Where(figure => figure.Key.StartsWith(series, StringComparison.Ordinal))
            .Select(figure => (figure.Key[series.Length..^1].Trim('"'), figure.Value))];
        Assert.NotEmpty(all);
        return all.Where(figure => figure.Value != 0);
    }
}
