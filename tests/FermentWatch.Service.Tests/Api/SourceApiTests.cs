using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.Intake.Door;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.RunningTests;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Service.Tests.Api;

public class SourceApiTests
{
    [Fact]
    public async Task SourceRules_AddedListedRemoved_AreUsedWithinSeconds()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        HttpResponseMessage wrong = await script.PostAsync("/api/v1/source-rules", new { topic = "hub/x", sensor = "shelf", unit = "Cel" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Contains("add the sensor first", await wrong.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        HttpResponseMessage added =
            await script.PostAsync("/api/v1/source-rules", new { topic = "hub/{device}/state", value_at = "/t", unit = "degF", low = "5C" });
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        JsonElement rule = Assert.Single((await script.GetAsync("/api/v1/source-rules")).EnumerateArray());
        Assert.Equal(("hub/{device}/state", "Json", "Temperature", 5.0),
            (rule.GetProperty("topic").GetString(), rule.GetProperty("payload").GetString(),
            rule.GetProperty("quantity").GetString(), rule.GetProperty("low_in_unit_of_quantity").GetDouble()));

        await HearAsync(kitchen, "hub/aa-01/state", "{\"t\": 68}");
        JsonElement offer = Assert.Single((await script.GetAsync("/api/v1/offers")).EnumerateArray(), each =>
            each.GetProperty("topic").GetString() == "hub/aa-01/state");
        HttpResponseMessage taken = await script.PostAsync("/api/v1/offers/take",
            new { topic = offer.GetProperty("topic").GetString(), value_pointer = offer.GetProperty("value_pointer").GetString(),
            where = "place cellar" });
        Assert.Equal("aa-01", (await taken.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("slug").GetString());
        await HearAsync(kitchen, "hub/aa-01/state", "{\"t\": 59}");
        await kitchen.SettleAsync();

        JsonElement sensor = Assert.Single((await script.GetAsync("/api/v1/sensors")).EnumerateArray());
        Assert.Equal(("cellar", 15.0),
            (sensor.GetProperty("place").GetString(), sensor.GetProperty("last")[0].GetProperty("value_in_unit_of_quantity").GetDouble()));
        Assert.Single((await script.GetAsync("/api/v1/source-rules")).EnumerateArray());
        string id = rule.GetProperty("id").GetString()!;
        Assert.Equal(HttpStatusCode.NoContent, (await script.Http.DeleteAsync($"/api/v1/source-rules/{id}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await script.Http.DeleteAsync($"/api/v1/source-rules/{id}")).StatusCode);
    }

    [Fact]
    public async Task Take_BareTopicTwiceAtOnce_MakesOneSensorAndOneRule()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();
        await HearAsync(kitchen, "garage/temperature", "51.8");
        var body = new { topic = "garage/temperature", where = "jar 1", unit = "degF" };

        HttpResponseMessage[] answers =
            await Task.WhenAll(script.PostAsync("/api/v1/offers/take", body), script.PostAsync("/api/v1/offers/take", body));

        Assert.Contains(answers, answer => answer.StatusCode == HttpStatusCode.Created);
        Sensor sensor = Assert.Single(await kitchen.Services.GetRequiredService<ISensorBook>().AllAsync(default));
        SourceRule rule = Assert.Single(await kitchen.Services.GetRequiredService<ISourceRuleBook>().AllAsync(default));
        Assert.Equal(("garage/temperature", sensor.Slug, "degF"), (rule.TopicFilter, rule.SensorSlug, rule.Unit));
        await HearAsync(kitchen, "garage/temperature", "50");
        Reading last = Assert.Single(await kitchen.Services.GetRequiredService<IReadingLog>().LastAsync(sensor.Key, default)).Reading;
        Assert.Equal(10, last.Value, 9);
        Assert.Empty((await script.GetAsync("/api/v1/offers")).EnumerateArray());
    }

    [Theory]
    [InlineData("garage/temperature", "place attic", null, "where")]
    [InlineData("garage/temperature", "nowhere", "pH", "unit")]
    [InlineData("garage/other", "nowhere", null, "topic")]
    public async Task Take_SomethingWrong_SaysWhichAndMakesNothing(string topic, string where, string? unit, string field)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await HearAsync(kitchen, "garage/temperature", "11");
        HttpResponseMessage answer = await script.PostAsync("/api/v1/offers/take", new { topic, where, unit });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(field, (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("refusals")[0].GetProperty("field").GetString());
        Assert.Empty(await kitchen.Services.GetRequiredService<ISensorBook>().AllAsync(default));
    }

    private static async Task HearAsync(RunningKitchen kitchen, string topic, string payload)
    {
        // The rules are read again once a second of the kitchen's clock.
        kitchen.Clock.Advance(TimeSpan.FromSeconds(2));
        await kitchen.Services.GetRequiredService<MessageDoor>().TakeAsync(
            new IncomingMessage("gateway", topic, System.Text.Encoding.UTF8.GetBytes(payload), kitchen.Now, null), CancellationToken.None);
    }
}
