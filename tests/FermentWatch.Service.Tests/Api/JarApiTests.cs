using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

public partial class JarApiTests
{
    [Fact]
    public async Task PutUp_NoSensorNoPlaceMadeBefore_AnswersTheJarAndAForecastFollows()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);

        HttpResponseMessage answer = await script.PutUpAsync(("salt", "by taste"), ("how_many", "2"));

        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var jars = await answer.Content.ReadFromJsonAsync<JsonElement[]>();
        Assert.Equal([1, 2], jars!.Select(jar => jar.GetProperty("number").GetInt32()));
        Assert.Equal("ByTaste", jars![0].GetProperty("salt_knowledge").GetString());
        JsonElement forecast = await script.GetAsync("/api/v1/jars/2/forecast");
        JsonElement day5 = forecast.GetProperty("course").EnumerateArray().Single(point => point.GetProperty("day").GetDouble() == 5);
        Assert.True(day5.GetProperty("ph_p10").GetDouble() < day5.GetProperty("ph_p90").GetDouble());
        Assert.Contains("not measured", (await script.GetAsync("/api/v1/jars/2")).GetProperty("sour_enough_words").GetString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Salt_AskedAsItWouldBeTyped_IsWeighedAndWhatCannotBeReadIsNamed()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);

        JsonElement salt = await script.GetAsync("/api/v1/salt?what=carrot&how_much=600%20g&added_water=400%20g&salt=5&salt_of=brine");
        Assert.Equal((21.053, 2.105, "21 g salt"),
            (Math.Round(salt.GetProperty("grams").GetDouble(), 3), Math.Round(salt.GetProperty("percent").GetDouble(), 3), salt.GetProperty("words")
            .GetString()));
        Assert.Equal(JsonValueKind.Null, (await script.GetAsync("/api/v1/salt?what=carrot&how_much=600%20g&salt=by%20taste"))
            .GetProperty("grams").ValueKind);
        HttpResponseMessage refused = await script.Http.GetAsync("/api/v1/salt?what=granite&how_much=much&salt=2");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Equal(["how much", "what"], (await refused.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("errors").EnumerateObject()
            .Select(each => each.Name).Order());
    }

    [Theory]
    [InlineData("salt", "225 %", "salt")]
    [InlineData("how_much", "-3 kg", "how much")]
    [InlineData("what", "granite", "what")]
    [InlineData("packed_at", "2999-01-01", "packed on")]
    [InlineData("vessel", "0 l", "vessel")]
    [InlineData("place", "the moon", "place")]
    [InlineData("how_many", "0", "how many")]
    [InlineData("also", "pork 200g", "also in it")]
    public async Task PutUp_ImpossibleValue_Answers422WithFieldWhatCameAndWhatWouldBeRight(string field, string value, string named)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);

        HttpResponseMessage answer = await script.PutUpAsync((field, value));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        JsonElement problem = await answer.Content.ReadFromJsonAsync<JsonElement>();
        JsonElement refusal = problem.GetProperty("refusals").EnumerateArray().Single(each => each.GetProperty("field").GetString() == named);
        Assert.NotEmpty(refusal.GetProperty("came").GetString()!);
        Assert.NotEmpty(refusal.GetProperty("would_be_right").GetString()!);
        Assert.True(problem.GetProperty("errors").TryGetProperty(named, out _));
        Assert.Empty((await script.GetAsync("/api/v1/jars")).EnumerateArray());
    }

    [Fact]
    public async Task PutUp_SomethingElse_IsAJarWithoutForecastThatSaysWhy()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);

        HttpResponseMessage answer = await script.PutUpAsync(("what", "something else"), ("its_name", "okra"));

        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        JsonElement jar = await script.GetAsync("/api/v1/jars/1");
        Assert.StartsWith("Nothing is forecast: nobody has figures for okra", jar.GetProperty("no_forecast").GetString(), StringComparison.Ordinal);
        Assert.Equal(jar.GetProperty("no_forecast").GetString(), jar.GetProperty("sour_enough_words").GetString());
        Assert.Equal(HttpStatusCode.NotFound, (await script.Http.GetAsync("/api/v1/jars/1/forecast")).StatusCode);
        Assert.NotEmpty(jar.GetProperty("next_step").GetString()!);
    }

    [Fact]
    public async Task Correct_ToLittleSalt_TakesTheForecastAwayAndBackToWeighedBringsIt()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await script.Http.PutAsJsonAsync("/api/v1/jars/1", new { salt = "1.2 %" })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await script.Http.PutAsJsonAsync("/api/v1/jars/1", new { salt = "1.2 %", it_is_right = true })).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await script.Http.GetAsync("/api/v1/jars/1/forecast")).StatusCode);
        Assert.Contains("Salted below 1.5 %", (await script.GetAsync("/api/v1/jars/1")).GetProperty("warnings")[0].GetString(),
            StringComparison.Ordinal);

        await script.Http.PutAsJsonAsync("/api/v1/jars/1", new { salt = "2.25 %" });
        Assert.Equal(HttpStatusCode.OK, (await script.Http.GetAsync("/api/v1/jars/1/forecast")).StatusCode);
    }

    [Fact]
    public async Task Titration_WithWhatWasUsed_IsWorkedOutKeptAndMovesTheForecast()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();
        string before = (await script.GetAsync("/api/v1/jars/1/forecast")).ToString();

        HttpResponseMessage answer = await script.Http.PostAsJsonAsync("/api/v1/jars/1/titration", new { base_millilitres = "16.65" });

        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        JsonElement entered = await answer.Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal(("Titration", 1.5002), (entered.GetProperty("kind").GetString(), entered.GetProperty("percent_lactic").GetDouble()));
        Assert.Equal("titrated: 1.50 % acid (16.65 mL x 0.1 N x 0.0901 x 100 / 10 mL)", entered.GetProperty("words").GetString());
        Assert.NotEqual(before, (await script.GetAsync("/api/v1/jars/1/forecast")).ToString());
        Assert.Equal("NotMeasured", (await script.GetAsync("/api/v1/jars/1")).GetProperty("acid_line").GetProperty("state").GetString());
        Assert.Equal(HttpStatusCode.UnprocessableEntity,
            (await script.Http.PostAsJsonAsync("/api/v1/jars/1/titration", new { base_millilitres = "90" })).StatusCode);
    }

    [Fact]
    public async Task Ph_OfAColdSample_IsKeptAndSaysWhyItDoesNotCount()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();

        HttpResponseMessage answer =
            await script.Http.PostAsJsonAsync("/api/v1/jars/1/ph",
            new { ph = "3.9", method = "meter", checked_in_buffer = true, sample_temperature = "43 F" });

        JsonElement entered = await answer.Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal(6.1, entered.GetProperty("sample_celsius").GetDouble(), 0.05);
        Assert.Contains("between 20 and 30", entered.GetProperty("why_it_does_not_count").GetString(), StringComparison.Ordinal);
        Assert.Equal("NotMeasured", (await script.GetAsync("/api/v1/jars/1")).GetProperty("acid_line").GetProperty("state").GetString());
    }

    [Fact]
    public async Task Measure_CountedThenTakenBack_MovesTheLineAndBack()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -9)));

        HttpResponseMessage answer = await script.PostAsync("/api/v1/jars/1/ph", new { ph = "3.9", method = "meter", checked_in_buffer = true });
        string id = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;
        Assert.Equal("MeasuredBelow", await LineAsync(script));
        Assert.Equal(HttpStatusCode.NoContent, (await script.Http.PostAsync($"/api/v1/jars/1/observations/{id}/take-back", null)).StatusCode);

        Assert.Equal("NotMeasured", await LineAsync(script));
    }

    [Fact]
    public async Task Measure_Corrected_TakesThePlaceOfTheWrongOne()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -9)));
        HttpResponseMessage wrong = await script.PostAsync("/api/v1/jars/1/ph", new { ph = "9", method = "meter", checked_in_buffer = true });
        string id = (await wrong.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;

        await script.PostAsync($"/api/v1/jars/1/ph?corrects={id}", new { ph = "3.9", method = "meter", checked_in_buffer = true });

        var entered = (await script.GetAsync("/api/v1/jars/1")).GetProperty("observations").EnumerateArray().ToList();
        Assert.Equal(2, entered.Count);
        Assert.Equal(3.9, Assert.Single(entered, each => each.GetProperty("taken_back_at").ValueKind == JsonValueKind.Null).GetProperty("ph")
            .GetDouble());
    }

    [Theory]
    [InlineData("15", "meter", "ph")]
    [InlineData("NaN", "meter", "ph")]
    [InlineData("3.9", "by eye", "method")]
    [InlineData("3.9", "", "method")]
    public async Task Measure_ImpossibleValue_Answers422(string ph, string method, string named)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();

        HttpResponseMessage answer = await script.PostAsync("/api/v1/jars/1/ph", new { ph, method });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.True((await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("errors").TryGetProperty(named, out _));
    }

    [Fact]
    public async Task Correct_MassAndLid_AnswersTheJarWithWhatStoodBefore()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("how_much", "600 g"));

        HttpResponseMessage answer = await script.PutAsync("/api/v1/jars/1", new { how_much = "0,9 kg", lid = "Tight" });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        JsonElement jar = await answer.Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal("Tight", jar.GetProperty("lid").GetString());
        Assert.Equal(["600 g", "vented lid"], jar.GetProperty("corrections").EnumerateArray()
            .Select(each => each.GetProperty("before").GetString()!.Replace("cabbage ", "", StringComparison.Ordinal)).Order());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await script.PutAsync("/api/v1/jars/1", new { how_much = "200 kg" })).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await script.PutAsync("/api/v1/jars/7", new { how_much = "1 kg" })).StatusCode);
    }

    [Fact]
    public async Task Correct_ByAChild_IsRefused()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();
        using Script child = await Script.ChildAsync(kitchen);

        Assert.Equal(HttpStatusCode.Forbidden, (await child.PutAsync("/api/v1/jars/1", new { how_much = "1 kg" })).StatusCode);
    }

    [Fact]
    public async Task Past_FinishedJar_IsListedWithWhatWasAndReopenedByTakingBack()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -9)));
        await script.PostAsync("/api/v1/round/today/stage", new { jar = 1, what = "Finished" });

        JsonElement past = Assert.Single((await script.GetAsync("/api/v1/jars/past")).EnumerateArray());
        Assert.StartsWith("Finished on ", past.GetProperty("sour_enough_words").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, past.GetProperty("sour_enough").ValueKind);
        string end = past.GetProperty("observations")[0].GetProperty("id").GetString()!;
        await script.Http.PostAsync($"/api/v1/jars/1/observations/{end}/take-back", null);

        Assert.Empty((await script.GetAsync("/api/v1/jars/past")).EnumerateArray());
        Assert.Equal("Fermenting", (await script.GetAsync("/api/v1/jars/1")).GetProperty("stage").GetString());
    }

    [Fact]
    public async Task Move_ToTheCellar_StandsThere()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", Days(kitchen, -2)));

        Assert.Equal(HttpStatusCode.NoContent, (await script.PostAsync("/api/v1/jars/1/place", new { place = "cellar" })).StatusCode);

        Assert.Equal("cellar", (await script.GetAsync("/api/v1/jars/1")).GetProperty("place").GetString());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await script.PostAsync("/api/v1/jars/1/place", new { place = "attic" })).StatusCode);
    }

    [Fact]
    public async Task Jar_UnknownNumber_Answers404AsProblem()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);

        HttpResponseMessage answer = await script.Http.GetAsync("/api/v1/jars/7");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("There is no jar 7.", (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("title").GetString());
    }

    private static async Task<string?> LineAsync(Script script) =>
        (await script.GetAsync("/api/v1/jars/1")).GetProperty("acid_line").GetProperty("state").GetString();

    private static string Days(RunningKitchen kitchen, int days) =>
        kitchen.Clock.GetUtcNow().AddDays(days).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
