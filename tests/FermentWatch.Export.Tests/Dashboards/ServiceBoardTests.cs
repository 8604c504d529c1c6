using FermentWatch.Export.Tests.Scrapes;
using FermentWatch.TestKit;
using NodaTime;

namespace FermentWatch.Export.Tests.Dashboards;

/// <summary>
/// Every query of the board of the service, asked of Debian's victoria-metrics about scrapes of a running service before and after.
/// Its <c>increase</c> is the plain difference; that of Prometheus reaches out to the ends of the span, and is about the same.
/// </summary>
public class ServiceBoardTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 4, 12, 0);

    [Fact]
    public async Task Queries_OverTwoScrapes_AllGiveValuesAndTheRightOnes()
    {
        await using var database = new VictoriaMetrics();
        await database.StartAsync();
        // Near the machine's own time: it takes nothing that lies far in its future.
        Instant now = Instant.FromUnixTimeSeconds(TimeProvider.System.GetUtcNow().ToUnixTimeSeconds());
        await using (ScrapedHost scraped = await ScrapedHost.StartAsync(Start, new
        {
            Metrics = new { Enabled = true },
            Influx = new { Address = "http://127.0.0.1:9", Token = "any", Org = "home", Bucket = "kitchen" },
            OutsideBroker = new { Host = "127.0.0.1", Port = 9 },
        }))
        {
            await scraped.GetAsync("/healthz/live");
            string before = await scraped.ScrapeAsync();
            // Twice, as nothing happened meanwhile: where a series begins within the span, this database counts from 0.
            await database.ImportTextAsync(before, now - Duration.FromMinutes(61));
            await database.ImportTextAsync(before, now - Duration.FromMinutes(31));
            await HappenAsync(scraped);
            await database.ImportTextAsync(await scraped.ScrapeAsync(), now - Duration.FromMinutes(1));
        }

        var answers = new Dictionary<string, Dictionary<string, double>>();
        foreach (BoardQuery query in Board.All.SelectMany(board => board.Queries).Where(query => query.Source == "fermentwatch-service"))
        {
            Dictionary<string, double> answer = await database.AskAsync(query.Text, now);
            Assert.True(answer.Count > 0, $"{query.Panel} {query.RefId} gave nothing: {query.Text}");
            answers.Add($"{query.Panel} {query.RefId}", answer);
        }
        Assert.Equal(3, answers["Readings an hour A"][""]);
        Assert.Equal([("not_parseable", 1)], answers["Refused an hour A"].Where(pair => pair.Value != 0).Select(pair => (pair.Key, pair.Value)));
        Assert.Equal(2, answers["Answers of the pages an hour, by status A"]["200"]);
        Assert.Equal(3, answers["Points that wait to be passed on A"]["reading"]);
        Assert.Equal(60, answers["The oldest of them A"]["reading"]);
        Assert.Equal(0, answers["Outside broker A"][""]);
        Assert.True(answers["A forecast takes A"][""] > 0);
        Assert.Equal(["readings", "records"], answers["Databases A"].Keys.Order(StringComparer.Ordinal));
        Assert.Equal(7, answers["Lag of each loop A"].Count);
    }

    private static async Task HappenAsync(ScrapedHost scraped)
    {
        using KitchenClient mira = await KitchenClient.SignInAsync(scraped.Host, "Mira");
        await mira.PostAsync("/api/v1/jars", new { what = "cabbage", how_much = "800g", salt = "2.25%", vessel = "1l", place = "kitchen counter" });
        Device device = await Device.AddAsync(scraped.Host, "counter");
        await device.SendPackAsync([.. Enumerable.Range(1, 3).Select(minute => (Start - Duration.FromMinutes(minute), 20.5))]);
        await Mosquitto.PublishAsync(
            scraped.Host.MqttPort, device.User, device.Password, $"fermentwatch/sensor/{device.User}/temperature", "warm");
        await scraped.GetAsync("/healthz/ready");
        await scraped.GetAsync("/healthz/live");
        await scraped.Host.ToAsync(Start + Duration.FromMinutes(1));
    }
}
