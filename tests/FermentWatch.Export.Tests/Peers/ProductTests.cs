using System.Net;
using System.Text.Json;
using FermentWatch.TestKit;
using NodaTime;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Export.Tests.Peers;

/// <summary>The whole product: from mosquitto_pub and an entry by HTTP to what victoria-metrics gives back.</summary>
public class ProductTests
{
    private static readonly Duration SettleTime = Duration.FromSeconds(30);

    // Near the machine's own time: the receiver takes nothing that lies far in its future.
    private readonly Instant _start = Instant.FromUnixTimeSeconds(TimeProvider.System.GetUtcNow().ToUnixTimeSeconds()) - Duration.FromDays(7);

    [Fact]
    public async Task Service_WithAReceiver_PassesReadingsEstimatesAndObservationsOn()
    {
        using var folder = new TemporaryFolder();
        await using var receiver = new VictoriaMetrics();
        await receiver.StartAsync();
        string settings = Path.Combine(folder.Path, "settings.json");
        await File.WriteAllTextAsync(settings,
            JsonSerializer.Serialize(
            new { Influx = new { Address = receiver.Address, Token = "s3cret", Org = "home", Bucket = "kitchen", Site = "number nine" } }));
        await using Host host = await Host.StartAsync(folder.Path, _start, "--settings", settings);
        using KitchenClient mira = await KitchenClient.SignInAsync(host, "Mira");
        (HttpStatusCode status, string body) = await mira.PostAsync("/api/v1/jars", new
        {
            what = "cabbage", how_much = "800g", salt = "2.25%", vessel = "1l", place = "kitchen counter", target = "ALittleSour",
        });
        Assert.True(status == HttpStatusCode.Created, body);
        Device device = await Device.AddAsync(host, "counter");
        await mira.PostAsync("/api/v1/sensors/counter/place", new { where = "place kitchen counter" });
        Assert.Equal((0, ""), await device.SendAsync(21.5));
        Assert.Equal(HttpStatusCode.Created, (await mira.PostAsync("/api/v1/jars/1/ph", new { ph = "5.9", method = "meter" })).Status);
        await host.SettleAsync();
        await host.ToAsync(_start + SettleTime);

        List<(string Series, long UnixMilliseconds, double Value)> samples = await receiver.ExportAsync();

        long start = _start.ToUnixTimeMilliseconds();
        Assert.Equal([(start, 21.5)], Of(samples, "reading_value{place=kitchen counter,quantity=temperature,sensor=counter,site=number nine}"));
        Assert.Equal([(start, 5.9)], Of(samples, "observation_value{jar=1,kind=ph,place=kitchen counter,site=number nine}"));
        JsonElement expected = (await mira.GetAsync("/api/v1/jars/1/forecast")).GetProperty("course")[0];
        // It keeps about twelve digits.
        foreach (string field in (string[])["ph_p10", "ph_p50", "ph_p90"])
            Assert.Equal(expected.GetProperty(field).GetDouble(),
                Of(samples, $"estimate_{field}{{jar=1,place=kitchen counter,site=number nine}}")[^1].Value, 9);
        Assert.Equal(
            ["estimate_acidity_p50", "estimate_days_to_target_p50", "estimate_ph_p10", "estimate_ph_p50", "estimate_ph_p90", "estimate_sourness_p50",
            "observation_value", "reading_value"],
            samples.Select(sample => sample.Series.Split('{')[0]).Distinct().Order(StringComparer.Ordinal));

        JsonElement state = await mira.GetAsync("/api/v1/series");
        Assert.True(state.GetProperty("enabled").GetBoolean());
        Assert.Equal(JsonValueKind.Null, state.GetProperty("trouble").ValueKind);
        Assert.Empty(state.GetProperty("left_out").EnumerateArray());
    }

    [Fact]
    public async Task Service_ReceiverThatIsNotThere_RunsAndSaysWhyItWaits()
    {
        using var folder = new TemporaryFolder();
        await using var absent = new VictoriaMetrics();
        string settings = Path.Combine(folder.Path, "settings.json");
        await File.WriteAllTextAsync(settings,
            JsonSerializer.Serialize(new { Influx = new { Address = absent.Address, Token = "s3cret", Org = "home", Bucket = "kitchen" } }));
        await using Host host = await Host.StartAsync(folder.Path, _start, "--settings", settings);
        using KitchenClient mira = await KitchenClient.SignInAsync(host, "Mira");
        await mira.PostAsync("/api/v1/jars", new { what = "cabbage", how_much = "800g", salt = "2.25%", vessel = "1l", place = "kitchen counter" });
        await host.SettleAsync();
        Assert.Contains("Connection refused", (await mira.GetAsync("/api/v1/series")).GetProperty("trouble").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Service_WithoutAnAddress_RunsNothingOfIt()
    {
        using var folder = new TemporaryFolder();
        await using Host host = await Host.StartAsync(folder.Path, _start);
        using KitchenClient mira = await KitchenClient.SignInAsync(host, "Mira");
        Assert.False((await mira.GetAsync("/api/v1/series")).GetProperty("enabled").GetBoolean());
    }

    private static List<(long UnixMilliseconds, double Value)> Of(List<(string Series, long UnixMilliseconds, double Value)> samples,
        string series) =>
        [.. samples.Where(sample => sample.Series == series).Select(sample => (sample.UnixMilliseconds, sample.Value)).Order()];
}
