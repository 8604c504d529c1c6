using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.RunningTests;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Service.Tests.Api;

public class SensorApiTests
{
    [Fact]
    public async Task Sensors_SilentDisagreeingAndShifted_SayWhatToLookAt()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        Guid place = await CounterAsync(kitchen);
        await kitchen.AddSensorAsync("right", place, 2, _ => 20 + (0.1 * Math.Sin(_ * 50)));
        await kitchen.AddSensorAsync("sunny", place, 2, day => 23.5 + (0.1 * Math.Sin(day * 50)));
        await kitchen.AddSensorAsync("moved", await CellarAsync(kitchen), 2, day => day < 1.99 ? 7 + (0.1 * Math.Sin(day * 50)) : 44.6);
        Sensor moved = (await kitchen.Services.GetRequiredService<ISensorBook>().FindAsync("moved", default))!;
        await kitchen.Services.GetRequiredService<IReadingIntake>().AppendAsync(
            [.. Enumerable.Range(1, 4)
                .Select(i => new Reading(moved.Key, Quantity.Temperature, 44.6 + (i / 10.0), kitchen.Now - Duration.FromMinutes(i), kitchen.Now,
                TimeSource.Payload))], default);
        await kitchen.SettleAsync();

        JsonElement[] sensors = [.. (await script.GetAsync("/api/v1/sensors")).EnumerateArray()];
        string Warnings(string slug) => string.Join('|', sensors.Single(sensor => sensor.GetProperty("slug").GetString() == slug)
            .GetProperty("warnings").EnumerateArray().Select(warning => warning.GetString()));
        Assert.StartsWith("3.5 °C above right, which stands in the same place.", Warnings("sunny"), StringComparison.Ordinal);
        Assert.StartsWith("3.5 °C below sunny, which stands in the same place.", Warnings("right"), StringComparison.Ordinal);
        Assert.StartsWith("Its figures moved from 7 to 44.8 and seem to be in Fahrenheit.", Warnings("moved"), StringComparison.Ordinal);

        // Its readings come every quarter of an hour: three pauses are 45 minutes.
        kitchen.Clock.Advance(TimeSpan.FromMinutes(70));
        sensors = [.. (await script.GetAsync("/api/v1/sensors")).EnumerateArray()];
        Assert.Contains("may be silent for 45 minutes", Warnings("right"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sensors_OneReadingDated2036_IsNotSilentWhileItIsHeard()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        Sensor sensor = await kitchen.AddSensorAsync("shelf", await CounterAsync(kitchen), 2, day => 20 + (0.1 * Math.Sin(day * 50)));
        Task SendAsync(Instant at) => kitchen.Services.GetRequiredService<IReadingIntake>().AppendAsync(
            [new Reading(sensor.Key, Quantity.Temperature, 20, at, kitchen.Now, TimeSource.Payload)], default);
        await SendAsync(Instant.FromUtc(2036, 1, 1, 0, 0));

        kitchen.Clock.Advance(TimeSpan.FromMinutes(70));
        await SendAsync(kitchen.Now);
        await kitchen.SettleAsync();

        JsonElement shown = Assert.Single((await script.GetAsync("/api/v1/sensors")).EnumerateArray());
        Assert.Empty(shown.GetProperty("warnings").EnumerateArray());
    }

    [Fact]
    public async Task Calibrations_GoodAndThenBad_DecideWhetherReadingsCount()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        Sensor probe = await kitchen.AddSensorAsync("probe", await CounterAsync(kitchen), 1, _ => 20 + (0.1 * Math.Sin(_ * 50)));
        HttpResponseMessage good = await script.PostAsync("/api/v1/sensors/probe/calibrations", Check("0", "174"));
        Assert.Equal(HttpStatusCode.Created, good.StatusCode);
        JsonElement answer = await good.Content.ReadFromJsonAsync<JsonElement>();
        Assert.True(answer.GetProperty("accepted").GetBoolean());
        await ReadAsync(kitchen, probe, 170);
        Assert.Equal(Verdict.Counts, await VerdictAsync(kitchen, probe));

        kitchen.Clock.Advance(TimeSpan.FromMinutes(5));
        HttpResponseMessage bad = await script.PostAsync("/api/v1/sensors/probe/calibrations", Check("41", "200"));
        Assert.Equal(
            ["The potential at pH 7 is more than 30 mV from zero: clean the probe, or its reference is spent."],
            (await bad.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("faults").EnumerateArray().Select(fault => fault.GetString()!).Take(1));
        await ReadAsync(kitchen, probe, 168);

        Assert.Equal(Verdict.BadCalibration, await VerdictAsync(kitchen, probe));
        Assert.Equal(2, (await script.GetAsync("/api/v1/sensors/probe/calibrations")).GetArrayLength());
        Assert.Contains("Its calibration is not accepted", (await script.GetAsync("/api/v1/sensors"))[0].GetProperty("warnings").ToString(),
            StringComparison.Ordinal);
        string page = await script.Http.GetStringAsync("/sensors/probe/calibration");
        Assert.Contains("Not accepted", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calibrations_BadOneTakenBack_ReadingsCountAgainAndThePageSaysWho()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        Sensor probe = await kitchen.AddSensorAsync("probe", await CounterAsync(kitchen), 1, _ => 20 + (0.1 * Math.Sin(_ * 50)));
        await script.PostAsync("/api/v1/sensors/probe/calibrations", Check("0", "174"));
        kitchen.Clock.Advance(TimeSpan.FromMinutes(5));
        HttpResponseMessage bad = await script.PostAsync("/api/v1/sensors/probe/calibrations", Check("41", "200"));
        string id = (await bad.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;
        await ReadAsync(kitchen, probe, 168);
        Assert.Equal(Verdict.BadCalibration, await VerdictAsync(kitchen, probe));

        Assert.Equal(HttpStatusCode.NotFound, (await script.Http.DeleteAsync($"/api/v1/sensors/probe/calibrations/{Guid.NewGuid()}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await script.Http.DeleteAsync($"/api/v1/sensors/other/calibrations/{id}")).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await script.Http.DeleteAsync($"/api/v1/sensors/probe/calibrations/{id}")).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await script.Http.DeleteAsync($"/api/v1/sensors/probe/calibrations/{id}")).StatusCode);
        await kitchen.SettleAsync();

        Assert.Equal(Verdict.Counts, await VerdictAsync(kitchen, probe));
        JsonElement filed = await script.GetAsync("/api/v1/sensors/probe/calibrations");
        Assert.Equal(2, filed.GetArrayLength());
        Assert.Equal(filed[0].GetProperty("by").GetString(), filed[0].GetProperty("taken_back_by").GetString());
        Assert.Equal(JsonValueKind.Null, filed[1].GetProperty("taken_back_at").ValueKind);
        Assert.DoesNotContain("not accepted", (await script.GetAsync("/api/v1/sensors"))[0].GetProperty("warnings").ToString(),
            StringComparison.Ordinal);
        string page = await script.Http.GetStringAsync("/sensors/probe/calibration");
        Assert.Contains("<h2 id=\"last-head\">Accepted</h2>", page, StringComparison.Ordinal);
        Assert.Contains($"by {filed[0].GetProperty("by").GetString()}.</p>", page[page.IndexOf("Taken back", StringComparison.Ordinal)..],
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calibrations_TakenBackOnThePage_CountsNoMoreAndSaysWho()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await kitchen.AddSensorAsync("probe", await CounterAsync(kitchen), 1, _ => 20);
        HttpResponseMessage filed = await script.PostAsync("/api/v1/sensors/probe/calibrations", Check("0", "174"));
        string id = (await filed.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;

        HttpResponseMessage answer = await script.SendFormAsync("/sensors/probe/calibration", $"take-back-{id}");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        string page = await script.Http.GetStringAsync("/sensors/probe/calibration");
        Assert.Contains("by Ada.</p>", page[page.IndexOf("Taken back", StringComparison.Ordinal)..], StringComparison.Ordinal);
        Assert.DoesNotContain("last-head", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calibrations_WrongFields_NamesEachAtOnce()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await kitchen.AddSensorAsync("probe", await CounterAsync(kitchen), 1, _ => 20);
        object[] buffers = [new { buffer = "7.5", shown = "0", temperature = "20" }, new { buffer = "4.00", shown = "many", temperature = "80C" }];
        HttpResponseMessage wrong = await script.PostAsync("/api/v1/sensors/probe/calibrations", new { shows = "mV", buffers });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Equal(["buffer 1", "shown 2", "temperature 2"],
            (await wrong.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("refusals").EnumerateArray()
                .Select(refusal => refusal.GetProperty("field").GetString()));
        HttpResponseMessage one =
            await script.PostAsync("/api/v1/sensors/probe/calibrations",
            new { shows = "pH", buffers = new[] { new { buffer = "7.00", shown = "7.02", temperature = "20" } } });
        Assert.Contains("There are 1 buffers; two or three belong here.", await one.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await script.PostAsync("/api/v1/sensors/other/calibrations", Check("0", "174"))).StatusCode);
    }

    private static object Check(string atSeven, string atFour) => new
    {
        shows = "mV",
        buffers = new[] { new { buffer = "7.00", shown = atSeven, temperature = "20C" },
        new { buffer = "4.00", shown = atFour, temperature = "20" } },
    };

    private static async Task ReadAsync(RunningKitchen kitchen, Sensor probe, double millivolts)
    {
        await kitchen.Services.GetRequiredService<IReadingIntake>().AppendAsync(
            [new Reading(probe.Key, Quantity.Millivolts, millivolts, kitchen.Now, kitchen.Now, TimeSource.Arrival)], default);
        await kitchen.SettleAsync();
    }

    private static async Task<Verdict> VerdictAsync(RunningKitchen kitchen, Sensor probe) =>
        (await kitchen.Services.GetRequiredService<IReadingLog>().LastAsync(probe.Key, default))
            .Single(last => last.Reading.Quantity == Quantity.Millivolts).Verdict;

    private static Task<Guid> CounterAsync(RunningKitchen kitchen) => PlaceAsync(kitchen, "kitchen counter");

    private static Task<Guid> CellarAsync(RunningKitchen kitchen) => PlaceAsync(kitchen, "cellar");

    private static async Task<Guid> PlaceAsync(RunningKitchen kitchen, string name) =>
        (await kitchen.Services.GetRequiredService<FermentWatch.Acts.Households.ReadyPlaces>().MakeAsync(default))
            .Single(place => place.Name == name).Id;
}
