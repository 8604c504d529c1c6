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

        HttpResponseMessage[] answers =
            await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => script.PostAsync("/api/v1/round/today/all-well", body)));

        var filed = new List<int>();
        foreach (HttpResponseMessage answer in answers)
            filed.Add((await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("filed").GetInt32());
        Assert.Equal([0, 0, 0, 3], filed.Order());
        JsonElement again = await (await script.PostAsync("/api/v1/round/today/all-well", body)).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Contains("was looked at by Ada at", again.GetProperty("known")[0].GetString(), StringComparison.Ordinal);
        Assert.All((await script.GetAsync("/api/v1/round/today")).GetProperty("jars").EnumerateArray(), jar =>
            Assert.True(jar.GetProperty("looked_at_today").GetBoolean()));
    }

    [Theory]
    [InlineData("seen", "Film", "Ada saw the same at jar 1 at")]
    [InlineData("taste", "Nearly", "Ada tasted jar 1 at")]
    [InlineData("stage", "Finished", "Jar 1 is finished already.")]
    public async Task Answer_TwoPeopleAtOnceThenTheSameAgain_IsFiledOnceAndSaysWhatIsKnown(string what, string kind, string known)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -9)));

        JsonElement[] answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => AnswerAsync(script, what, kind)));
        JsonElement again = await AnswerAsync(script, what, kind);

        Assert.Equal([0, 0, 0, 1], answers.Select(answer => answer.GetProperty("filed").GetInt32()).Order());
        Assert.Equal(0, again.GetProperty("filed").GetInt32());
        Assert.StartsWith(known, Assert.Single(again.GetProperty("known").EnumerateArray()).GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Answer_SameKeySentAgainOnTheNextDay_IsFiledOnce()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -9)));
        script.Http.DefaultRequestHeaders.Add("Idempotency-Key", Guid.CreateVersion7().ToString());
        await AnswerAsync(script, "taste", "Nearly");
        string tasted = (await script.GetAsync("/api/v1/jars/1")).GetRawText();
        kitchen.Clock.Advance(TimeSpan.FromDays(1));

        HttpResponseMessage again = await script.PostAsync("/api/v1/round/today/taste", new { jar = 1, what = "Nearly" });

        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Equal(1, Count(tasted, "\"Taste\""));
        Assert.Equal(1, Count((await script.GetAsync("/api/v1/jars/1")).GetRawText(), "\"Taste\""));
    }

    [Theory]
    [InlineData("seen", "Slime", "Film")]
    [InlineData("taste", "Nearly", "Right")]
    [InlineData("stage", "Finished", "ThrownOut")]
    public async Task Answer_SameKeyWithAnotherAnswer_IsAskedAboutAndTheFirstStands(string what, string first, string then)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -9)));
        script.Http.DefaultRequestHeaders.Add("Idempotency-Key", Guid.CreateVersion7().ToString());
        await AnswerAsync(script, what, first);
        string stands = (await script.GetAsync("/api/v1/jars/1")).GetRawText();

        HttpResponseMessage again = await script.PostAsync($"/api/v1/round/today/{what}", new { jar = 1, what = then });

        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Contains("before with", await again.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(stands, (await script.GetAsync("/api/v1/jars/1")).GetRawText());
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
        Assert.Contains("\"enter\":\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
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

    private static async Task<JsonElement> AnswerAsync(Script script, string what, string kind) =>
        await (await script.PostAsync($"/api/v1/round/today/{what}", new { jar = 1, what = kind })).Content.ReadFromJsonAsync<JsonElement>();

    private static int Count(string text, string word) => text.Split(word).Length - 1;

    private static string Days(RunningKitchen kitchen, int days) =>
        kitchen.Clock.GetUtcNow().AddDays(days).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
