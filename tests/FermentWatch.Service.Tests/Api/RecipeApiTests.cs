using System.Net;
using System.Text;
using System.Text.Json;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

/// <summary>Recipes by the API and on their pages.</summary>
public sealed class RecipeApiTests : IAsyncLifetime
{
    private const string Kraut = """
        {"format": "fermentwatch-recipe/1", "name": "<i>garden</i> kraut",
         "vegetables": [{"name": "cabbage", "grams": 900}, {"name": "carrot", "grams": 100}],
         "seasonings": [{"name": "mustard seed", "grams": 5}], "salt_percent": 2.5, "note": "<script>alert(1)</script>"}
        """;

    private static readonly Guid Id = Guid.Parse("01920000-0000-7000-8000-000000000001");
    private RunningKitchen _kitchen = null!;
    private Script _ada = null!;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _ada = await Script.SignedInAsync(_kitchen);
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task Put_AFile_IsListedReadAsTheFileScaledAndRemoved()
    {
        Assert.Equal(HttpStatusCode.OK, (await PutAsync(_ada, Id, Kraut)).StatusCode);
        JsonElement listed = Assert.Single((await _ada.GetAsync("/api/v1/recipes")).EnumerateArray());
        Assert.Equal(("<i>garden</i> kraut", 2.5), (listed.GetProperty("name").GetString(), listed.GetProperty("salt_percent").GetDouble()));
        Assert.Equal("mustard", Assert.Single(listed.GetProperty("allergens").EnumerateArray()).GetString());

        HttpResponseMessage file = await _ada.Http.GetAsync($"/api/v1/recipes/{Id}?download=true");
        Assert.Equal("igardeni-kraut.recipe.json", file.Content.Headers.ContentDisposition!.FileName);
        string text = await file.Content.ReadAsStringAsync();
        Guid another = Guid.NewGuid();
        Assert.Equal(HttpStatusCode.OK, (await PutAsync(_ada, another, text.Replace("garden", "yard", StringComparison.Ordinal))).StatusCode);

        JsonElement scaled = await _ada.GetAsync($"/api/v1/recipes/{Id}/scaled?jars=4&mass=4.02+kg");
        Assert.Equal(4, scaled.GetProperty("jar_count").GetInt32());
        Assert.Equal(900, scaled.GetProperty("each_vegetables")[0].GetProperty("grams").GetDouble(), 9);
        Assert.Equal(4020 * 0.025, scaled.GetProperty("all_salt_grams").GetDouble(), 9);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await _ada.Http.GetAsync($"/api/v1/recipes/{Id}/scaled?jars=0")).StatusCode);

        Assert.Equal(HttpStatusCode.NoContent, (await _ada.Http.DeleteAsync($"/api/v1/recipes/{another}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await _ada.Http.DeleteAsync($"/api/v1/recipes/{another}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await _ada.Http.GetAsync($"/api/v1/recipes/{another}")).StatusCode);
    }

    [Fact]
    public async Task Put_WhatCannotBe_IsRefusedByFieldsAndNothingIsKept()
    {
        HttpResponseMessage answer = await PutAsync(_ada, Id, Kraut.Replace("2.5", "8.2", StringComparison.Ordinal)
            .Replace("\"grams\": 5", "\"grams\": -5", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        using JsonDocument problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
        Assert.Equal(["salt_percent", "seasonings[0].grams"], problem.RootElement.GetProperty("errors").EnumerateObject().Select(each =>
            each.Name).Order());
        foreach (string odd in new[] { "", "nonsense", "[]", new string('[', 2000), "{\"format\": 1}", "\0", new string(' ', 70_000) + Kraut })
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PutAsync(_ada, Id, odd)).StatusCode);
        Assert.Empty((await _ada.GetAsync("/api/v1/recipes")).EnumerateArray());
    }

    [Fact]
    public async Task Put_OddSalt_IsAskedAboutByFileAndFormAndKeptWhenInsistedOn()
    {
        string soft = Kraut.Replace("2.5", "1.6", StringComparison.Ordinal);
        HttpResponseMessage asked = await PutAsync(_ada, Id, soft);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        using JsonDocument problem = JsonDocument.Parse(await asked.Content.ReadAsStringAsync());
        Assert.StartsWith("Only 1.6 % of salt?", Assert.Single(problem.RootElement.GetProperty("questions").EnumerateArray())
            .GetProperty("question").GetString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await PutAsync(_ada, Id, soft, "?it_is_right=true")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await PutAsync(_ada, Id, soft.Replace("alert", "prompt", StringComparison.Ordinal))).StatusCode);
        Assert.Contains("Only 1.6 % of salt?", await _ada.Http.GetStringAsync($"/recipes/{Id}"), StringComparison.Ordinal);

        (string, string)[] typed = [("Input.Id", $"{Guid.NewGuid()}"), ("Input.Name", "soft"), ("Input.Vegetables", "cabbage 900 g"),
            ("Input.Salt", "1.6 %")];
        HttpResponseMessage form = await _ada.SendFormAsync("/recipes/new", "recipe", typed);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, form.StatusCode);
        Assert.Contains("name=\"Input.ItIsRight\"", await form.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        form = await _ada.SendFormAsync("/recipes/new", "recipe", [.. typed, ("Input.ItIsRight", "true")]);
        Assert.Equal(HttpStatusCode.Found, form.StatusCode);
    }

    [Fact]
    public async Task Put_NameOfAnother_IsRefusedAndTheOtherStays()
    {
        await PutAsync(_ada, Id, Kraut);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PutAsync(_ada, Guid.NewGuid(), Kraut.Replace("garden", "GARDEN",
            StringComparison.Ordinal))).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await PutAsync(_ada, Id, Kraut.Replace("2.5", "2.25", StringComparison.Ordinal))).StatusCode);
        Assert.Equal(2.25, Assert.Single((await _ada.GetAsync("/api/v1/recipes")).EnumerateArray()).GetProperty("salt_percent").GetDouble());
    }

    [Fact]
    public async Task AChild_ReadsAndScalesAndWritesNothing()
    {
        await PutAsync(_ada, Id, Kraut);
        using Script lena = await Script.ChildAsync(_kitchen);
        Assert.Equal(HttpStatusCode.OK, (await lena.Http.GetAsync($"/api/v1/recipes/{Id}")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await lena.Http.GetAsync($"/recipes/{Id}?jars=2")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await PutAsync(lena, Guid.NewGuid(), Kraut)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await lena.Http.DeleteAsync($"/api/v1/recipes/{Id}")).StatusCode);
        Assert.DoesNotContain("Put up by this recipe", await lena.Http.GetStringAsync($"/recipes/{Id}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_OfARecipe_ShowsTextAsTextAndLeadsToThePutUpFormFilledIn()
    {
        await PutAsync(_ada, Id, Kraut);
        string page = await _ada.Http.GetStringAsync($"/recipes/{Id}?jars=3&vessel=1+l");
        Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<i>", page, StringComparison.Ordinal);
        Assert.Contains("For 3 jars of 1 l", page, StringComparison.Ordinal);
        string form = await _ada.Http.GetStringAsync($"/put-up?recipe={Id}&jars=3&vessel=1+l");
        Assert.Matches("name=\"Input.HowMany\"[^>]*value=\"3\"", form);
        Assert.Matches("name=\"Input.HowMuch\"[^>]*value=\"761.19 g\"", form);
        Assert.Matches("name=\"Input.Also\"[^>]*value=\"carrot 84.58 g, mustard seed 4.23 g\"", form);
    }

    [Fact]
    public async Task PutUp_ByARecipeWithVinegarAndBrine_HasItsVinegarAndSaysThatNoJarGivesBrine()
    {
        await PutAsync(_ada, Id, Kraut.Replace("\"salt_percent\"", "\"vinegar_grams\": 60, \"starter_brine_grams\": 50, \"salt_percent\"",
            StringComparison.Ordinal));
        Assert.Contains("vinegar, 5 % acid", await _ada.Http.GetStringAsync($"/recipes/{Id}"), StringComparison.Ordinal);
        string form = await _ada.Http.GetStringAsync($"/put-up?recipe={Id}");
        Assert.Matches("name=\"Input.Vinegar\"[^>]*value=\"60 g\"", form);
        Assert.Matches("name=\"Input.VinegarStrength\"[^>]*value=\"5 %\"", form);
        Assert.Contains("It takes 50 g of brine of an earlier jar, and no jar can give any now", form, StringComparison.Ordinal);
        Assert.DoesNotContain("name=\"Input.StarterBrine\"", form, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Form_FromAJar_KeepsWhatWentIn()
    {
        await _ada.PutUpAsync(("also", "carrot 100 g"));
        string page = WebUtility.HtmlDecode(await _ada.Http.GetStringAsync("/recipes/new?jar=1"));
        Assert.Contains("cabbage 900 g\ncarrot 100 g</textarea>", page, StringComparison.Ordinal);
        HttpResponseMessage answer = await _ada.SendFormAsync("/recipes/new?jar=1", "recipe", ("Input.Id", $"{Id}"), ("Input.Name", "ours"),
            ("Input.Vegetables", "cabbage 900 g\r\ncarrot 100 g"), ("Input.Salt", "2.25 %"));
        Assert.EndsWith($"recipes/{Id}", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(900, (await _ada.GetAsync($"/api/v1/recipes/{Id}")).GetProperty("vegetables")[0].GetProperty("grams").GetDouble());
    }

    [Fact]
    public async Task Pages_OddAddresses_AreNeverTheServicesFault()
    {
        foreach (string path in new[] { "/recipes/new?jar=99", $"/recipes/{Guid.NewGuid()}", "/recipes/x", $"/put-up?recipe={Guid.NewGuid()}",
            "/put-up?recipe=x&jars=-1", $"/recipes/{Guid.NewGuid()}/change", "/salt?reading=x&percent=y", "/salt?scale=9", "/jars/9/salt" })
            Assert.True((int)(await _ada.Http.GetAsync(path)).StatusCode < 500, path);
    }

    private static Task<HttpResponseMessage> PutAsync(Script script, Guid id, string file, string query = "") =>
        script.Http.PutAsync($"/api/v1/recipes/{id}{query}", new StringContent(file, Encoding.UTF8, "application/json"));
}
