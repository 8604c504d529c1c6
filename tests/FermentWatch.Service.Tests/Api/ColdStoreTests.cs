using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.RunningTests;
using static System.Globalization.CultureInfo;

namespace FermentWatch.Service.Tests.Api;

/// <summary>Jars in, portions out, and where jars go.</summary>
public sealed class ColdStoreTests : IAsyncLifetime
{
    private RunningKitchen _kitchen = null!;
    private Script _ada = null!, _lena = null!;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _ada = await Script.SignedInAsync(_kitchen);
        _lena = await Script.ChildAsync(_kitchen);
        await _ada.PutUpAsync(("how_many", "2"),
            ("packed_at", _kitchen.Clock.GetUtcNow().AddDays(-30).ToString("yyyy-MM-dd", InvariantCulture)));
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        _lena.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task Portions_OutOfTheCold_AreReckonedOnceEachAndTakenBackByWhoeverEnteredThem()
    {
        await ToTheColdAsync(1);
        var key = Guid.CreateVersion7();
        JsonElement portion = await TakenAsync(_lena, 1, "1/4", key);
        Assert.Equal((25, "a quarter taken out", "Lena"),
            (portion.GetProperty("taken_percent").GetDouble(), portion.GetProperty("words").GetString(), portion.GetProperty("by").GetString()));
        Assert.Equal(portion.GetProperty("id").GetGuid(), (await TakenAsync(_lena, 1, "1/4", key)).GetProperty("id").GetGuid());
        Assert.Equal(HttpStatusCode.Conflict, (await SendAsync(_lena, "/api/v1/jars/1/portions", new { amount = "1/2" }, key)).StatusCode);
        Assert.Equal(75, (await _ada.GetAsync("/api/v1/jars/1")).GetProperty("left_percent").GetDouble());

        _kitchen.Clock.Advance(TimeSpan.FromHours(2));
        await TakenAsync(_ada, 1, "1/4");
        JsonElement cold = await _ada.GetAsync("/api/v1/cold");
        JsonElement jar = Assert.Single(cold.GetProperty("jars").EnumerateArray());
        Assert.Equal((50, 0.5, true), (jar.GetProperty("left_percent").GetDouble(), cold.GetProperty("left_jars_count").GetDouble(),
            jar.GetProperty("eat_first").GetBoolean()));

        string id = portion.GetProperty("id").GetString()!;
        Assert.Equal(HttpStatusCode.NoContent, (await _lena.PostAsync($"/api/v1/jars/1/observations/{id}/take-back", new { })).StatusCode);
        Assert.Equal(75, (await _ada.GetAsync("/api/v1/jars/1")).GetProperty("left_percent").GetDouble());
    }

    [Theory]
    [InlineData("", "nothing")]
    [InlineData("a lot", "a lot")]
    [InlineData("3/2", "3/2")]
    [InlineData("0", "0")]
    [InlineData("2 l", "2 l")]
    [InlineData("5 lb", "5 lb")]
    public async Task Portions_AmountThatCannotBe_NamesWhatCame(string amount, string came)
    {
        await ToTheColdAsync(1);
        HttpResponseMessage answer = await _ada.PostAsync("/api/v1/jars/1/portions", new { amount });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        JsonElement refusal = Assert.Single((await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("refusals").EnumerateArray());
        Assert.Equal(("amount", came), (refusal.GetProperty("field").GetString(), refusal.GetProperty("came").GetString()));
        Assert.Equal(100, (await _ada.GetAsync("/api/v1/jars/1")).GetProperty("left_percent").GetDouble());
    }

    [Fact]
    public async Task Child_UntastedJarOrOneInTrouble_IsSentToAnAdult()
    {
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await _lena.PostAsync("/api/v1/jars/1/portions", new { amount = "1/8" })).StatusCode);
        await ToTheColdAsync(1);
        Assert.Equal(HttpStatusCode.Created, (await _lena.PostAsync("/api/v1/jars/1/portions", new { amount = "1/8" })).StatusCode);
        await _lena.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "FuzzOrUnsure" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await _lena.PostAsync("/api/v1/jars/1/opened", new { })).StatusCode);
    }

    [Fact]
    public async Task Opened_IsSaidOnceAndStandsBeforeTheClosedJar()
    {
        await ToTheColdAsync(1);
        await ToTheColdAsync(2);
        Assert.Equal(1, await FiledAsync("/api/v1/jars/2/opened", new { }));
        Assert.Equal(0, await FiledAsync("/api/v1/jars/2/opened", new { }));
        Assert.Equal([2, 1], (await _ada.GetAsync("/api/v1/cold")).GetProperty("jars").EnumerateArray()
            .Select(jar => jar.GetProperty("number").GetInt32()));
        string page = await _ada.Http.GetStringAsync("/cold");
        Assert.Matches("Open since [^:]+: eat first", page);
        Assert.Contains("common practice, no source", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ColdPage_TookSomeThenAQuarter_IsWrittenInTwoTapsAndOnceHoweverOftenSent()
    {
        await ToTheColdAsync(1);
        Assert.Contains("href=\"jars/1/portion?from=cold\"", await _ada.Http.GetStringAsync("/cold"), StringComparison.Ordinal);
        string form = await _ada.Http.GetStringAsync("/jars/1/portion?from=cold");
        string id = Regex.Match(form, "name=\"Input.Id\" value=\"([^\"]+)\"").Groups[1].Value;
        HttpResponseMessage answer = await TapAsync(id, "1/4");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        string cold = await _ada.Http.GetStringAsync(answer.Headers.Location!.ToString());
        Assert.Contains("Written down for jar 1: a quarter taken out. About three quarters left.", cold, StringComparison.Ordinal);
        await TapAsync(id, "1/4");
        Assert.Equal(75, (await _ada.GetAsync("/api/v1/jars/1")).GetProperty("left_percent").GetDouble());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await TapAsync(id, "1/2")).StatusCode);
    }

    [Fact]
    public async Task GivenAway_ByTheApi_StandsOnTheJarAndItsTagSaysByWhenWithWhoSaysSo()
    {
        await ToTheColdAsync(1);
        Assert.Equal(1, await FiledAsync("/api/v1/round/today/stage", new { jar = 1, what = "Finished", went = "GivenAway",
            given_to = "the choir" }));
        JsonElement jar = await _ada.GetAsync("/api/v1/jars/1");
        Assert.Equal(("Finished", "GivenAway", "the choir"),
            (jar.GetProperty("stage").GetString(), jar.GetProperty("went").GetString(), jar.GetProperty("given_to").GetString()));
        Assert.StartsWith("Given away to the choir on ", jar.GetProperty("sour_enough_words").GetString(), StringComparison.Ordinal);
        JsonElement tag = await _ada.GetAsync("/api/v1/jars/1/tag");
        Assert.Contains("USDA", tag.GetProperty("eat_by_source").GetString(), StringComparison.Ordinal);
        string page = await _ada.Http.GetStringAsync("/jars/1/tag");
        Assert.Contains("for the choir", page, StringComparison.Ordinal);
        Assert.Contains("Keep cold, at 4", page, StringComparison.Ordinal);
        Assert.Contains("Your local food-safety guidance comes first.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Frozen_StaysListedUntilItIsEaten_AndIsReopenedInTheFreezer()
    {
        await ToTheColdAsync(1);
        await FiledAsync("/api/v1/round/today/stage", new { jar = 1, what = "Finished", went = "Frozen" });
        Assert.Equal([1], Frozen(await _ada.GetAsync("/api/v1/cold")));
        Assert.Contains("In the freezer", await _ada.Http.GetStringAsync("/cold"), StringComparison.Ordinal);
        _kitchen.Clock.Advance(TimeSpan.FromDays(3));
        await FiledAsync("/api/v1/round/today/stage", new { jar = 1, what = "Finished", went = "Eaten" });
        JsonElement jar = await _ada.GetAsync("/api/v1/jars/1");
        Assert.Empty(Frozen(await _ada.GetAsync("/api/v1/cold")));
        Assert.Matches("^Eaten up on .*Into the freezer on ", jar.GetProperty("sour_enough_words").GetString());
        string end = jar.GetProperty("observations").EnumerateArray().Last(each => each.GetProperty("words").GetString() == "eaten up")
            .GetProperty("id").GetString()!;
        await _ada.PostAsync($"/api/v1/jars/1/observations/{end}/take-back", new { });
        Assert.Equal([1], Frozen(await _ada.GetAsync("/api/v1/cold")));
    }

    private static IEnumerable<int> Frozen(JsonElement cold) => cold.GetProperty("frozen_numbers").EnumerateArray().Select(each => each.GetInt32());

    private async Task ToTheColdAsync(int jar)
    {
        Assert.Equal(1, await FiledAsync("/api/v1/round/today/stage", new { jar, what = "Cold" }));
        _kitchen.Clock.Advance(TimeSpan.FromMinutes(10));
    }

    private async Task<int> FiledAsync(string path, object body)
    {
        HttpResponseMessage answer = await _ada.PostAsync(path, body);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("filed").GetInt32();
    }

    private static async Task<JsonElement> TakenAsync(Script who, int jar, string amount, Guid? key = null)
    {
        HttpResponseMessage answer = await SendAsync(who, $"/api/v1/jars/{jar}/portions", new { amount }, key ?? Guid.CreateVersion7());
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }

    private static Task<HttpResponseMessage> SendAsync(Script who, string path, object body, Guid key)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = JsonContent.Create(body) };
        request.Headers.Add("Idempotency-Key", key.ToString());
        return who.Http.SendAsync(request);
    }

    private Task<HttpResponseMessage> TapAsync(string id, string share) =>
        _ada.SendFormAsync("/jars/1/portion?from=cold", "step", ("Input.Id", id), ("Input.Choice", share));
}
