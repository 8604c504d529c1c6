using System.Net;
using System.Text.Json;
using FermentWatch.TestKit;
using NodaTime;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Scenario.Tests;

/// <summary>From a sensor's message to a forecast, through the real doors: mosquitto_pub, command line and HTTP.</summary>
public sealed class FirstLineTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 6, 0);
    private static readonly Duration Day = Duration.FromDays(1);

    [Fact]
    public async Task Forecast_ColderKitchenAndAMeterReading_MovesLaterAndNarrows()
    {
        using var folder = new TemporaryFolder();
        await using Host host = await Host.StartAsync(folder.Path, Start);
        using KitchenClient mira = await KitchenClient.SignInAsync(host, "Mira");

        // A jar put up over HTTP, with no sensor.
        (HttpStatusCode status, string body) = await mira.PostAsync("/api/v1/jars", new
        {
            what = "cabbage", how_much = "800g", salt = "2.25%", vessel = "1l", place = "kitchen counter", target = "ALittleSour",
        });
        Assert.True(status == HttpStatusCode.Created, body);
        (double early, double middle, double late) blind = await SourEnoughAsync(mira);

        // Then given a sensor: a bare number now, a pack with past times later.
        Device device = await Device.AddAsync(host, "counter");
        Assert.Equal(HttpStatusCode.NoContent,
            (await mira.PostAsync("/api/v1/sensors/counter/place", new { where = "place kitchen counter" })).Status);
        Assert.Equal((0, ""), await device.SendAsync(21.5));
        JsonElement last = (await mira.GetAsync("/api/v1/sensors"))[0].GetProperty("last")[0];
        Assert.Equal(21.5, last.GetProperty("value_in_unit_of_quantity").GetDouble());

        await WarmDayAsync(host, device, 0, 21);
        await WarmDayAsync(host, device, 1, 21);
        (double early, double middle, double late) warm = await SourEnoughAsync(mira);
        Assert.True(warm.late - warm.early < blind.late - blind.early, $"two measured days must narrow it: {blind} to {warm}");

        // The kitchen gets colder.
        await WarmDayAsync(host, device, 2, 13);
        await WarmDayAsync(host, device, 3, 13);
        (double early, double middle, double late) cold = await SourEnoughAsync(mira);
        Assert.True(cold.middle > warm.middle + 0.5, $"two cold days must move it later: {warm} to {cold}");

        // A meter reading near what is expected narrows it.
        JsonElement now = (await mira.GetAsync("/api/v1/jars/1/forecast")).GetProperty("course").EnumerateArray()
            .Last(point => point.GetProperty("day").GetDouble() <= 4);
        string ph = now.GetProperty("ph_p50").GetDouble().ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);
        (status, body) = await mira.PostAsync("/api/v1/jars/1/ph", new { ph, method = "meter", checked_in_buffer = true });
        Assert.True(status == HttpStatusCode.Created, body);
        (double early, double middle, double late) measured = await SourEnoughAsync(mira);
        Assert.True(measured.late - measured.early < cold.late - cold.early, $"a reading must narrow it: {cold} to {measured}");

        string page = await mira.PageAsync("/jars/1");
        Assert.Contains($"pH {ph.TrimEnd('0')}", page, StringComparison.Ordinal);
        Assert.Contains("measured temperature", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Api_ImpossibleValues_Answer422AndSayWhatWouldBeRight()
    {
        using var folder = new TemporaryFolder();
        await using Host host = await Host.StartAsync(folder.Path, Start);
        using KitchenClient mira = await KitchenClient.SignInAsync(host, "Mira");
        (HttpStatusCode status, string body) = await mira.PostAsync("/api/v1/jars", new
        {
            what = "moonroot", how_much = "-2kg", salt = "225%", vessel = "1l", place = "kitchen counter", packed_at = "2026-10-02",
        });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        string[] fields = [.. JsonDocument.Parse(body).RootElement.GetProperty("refusals").EnumerateArray()
            .Select(refusal => refusal.GetProperty("field").GetString()!).Order()];
        Assert.Equal(["how much", "packed on", "salt", "what"], fields);

        await mira.PostAsync("/api/v1/jars",
            new { what = "cabbage", how_much = "800g", salt = "by taste", vessel = "1l", place = "kitchen counter" });
        (status, body) = await mira.PostAsync("/api/v1/jars/1/ph", new { ph = "15", method = "meter" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("15", body, StringComparison.Ordinal);
    }

    private static async Task WarmDayAsync(Host host, Device device, int day, double celsius)
    {
        Instant from = Start + (Day * day);
        await host.ToAsync(from + Day);
        // A little up and down: a sensor that shows one value for more than a day is taken to hang.
        Assert.Equal((0, ""), await device.SendSpanAsync(from + Duration.FromMinutes(1), from + Day, at =>
            celsius + (0.1 * ((at - from).TotalMinutes % 30 < 15 ? 1 : -1))));
        await host.SettleAsync();
    }

    private static async Task<(double Early, double Middle, double Late)> SourEnoughAsync(KitchenClient mira)
    {
        JsonElement days = (await mira.GetAsync("/api/v1/jars/1/forecast")).GetProperty("sour_enough");
        return (days.GetProperty("days_p10").GetDouble(), days.GetProperty("days_p50").GetDouble(), days.GetProperty("days_p90").GetDouble());
    }
}
