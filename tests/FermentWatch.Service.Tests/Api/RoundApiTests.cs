using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

public class RoundApiTests
{
    [Fact]
    public async Task AllWell_TwoPeopleAtOnceAndTheSameAnswerTwice_IsFiledOnceAndSaysWhoWasFirst()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("how_many", "3"), ("packed_at", Days(kitchen, -4)));
        var body = new { opened = false };

        HttpResponseMessage[] answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => script.PostAsync("/api/v1/round/today/all-well", body)));

        var filed = new List<int>();
        foreach (HttpResponseMessage answer in answers)
            filed.Add((await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("filed").GetInt32());
        Assert.Equal([0, 0, 0, 3], filed.Order());
        JsonElement again = await (await script.PostAsync("/api/v1/round/today/all-well", body)).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Contains("was looked at by Ada at", again.GetProperty("known")[0].GetString(), StringComparison.Ordinal);
        Assert.All((await script.GetAsync("/api/v1/round/today")).GetProperty("jars").EnumerateArray(), jar => Assert.True(jar.GetProperty("looked_at_today").GetBoolean()));
    }

    [Fact]
    public async Task Answer_FinishedJar_IsRefusedWithAClearWord()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -30)));
        Assert.Equal(HttpStatusCode.OK, (await script.PostAsync("/api/v1/round/today/stage", new { jar = 1, what = "Finished" })).StatusCode);

        HttpResponseMessage answer = await script.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "Film" });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("this one is finished", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("seen", "Ghost")]
    [InlineData("seen", "99")]
    [InlineData("seen", "")]
    [InlineData("taste", "0")]
    public async Task Answer_UnknownKind_Answers422(string what, string kind)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();

        HttpResponseMessage answer = await script.PostAsync($"/api/v1/round/today/{what}", new { jar = 1, what = kind });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("would be right", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Seen_Film_WithdrawsTheForecastUntilAPhIsMeasured()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -9)));
        await script.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "Film" });
        Assert.Equal(HttpStatusCode.NotFound, (await script.Http.GetAsync("/api/v1/jars/1/forecast")).StatusCode);
        Assert.Equal(JsonValueKind.Null, (await script.GetAsync("/api/v1/jars/1")).GetProperty("sour_enough").ValueKind);
        kitchen.Clock.Advance(TimeSpan.FromMinutes(1));

        await script.PostAsync("/api/v1/jars/1/ph", new { ph = "3.9", method = "meter", checked_in_buffer = true });

        Assert.Equal(HttpStatusCode.OK, (await script.Http.GetAsync("/api/v1/jars/1/forecast")).StatusCode);
    }

    private static string Days(RunningKitchen kitchen, int days) =>
        kitchen.Clock.GetUtcNow().AddDays(days).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
