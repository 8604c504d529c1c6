using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

/// <summary>A jar that was salted wrongly, and brines, asked by a script as on the pages.</summary>
public class SaltMendTests
{
    [Fact]
    public async Task Salt_TooLittle_SaysHowMuchAndItsCorrectionIsTaken()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync();
        JsonElement answer = await ada.GetAsync("/api/v1/jars/1/salt?happened=TooLittle&went_in=9+g");
        Assert.Equal(11.25, answer.GetProperty("salt_to_add_grams").GetDouble(), 9);
        Assert.False(answer.GetProperty("throw_out_advised").GetBoolean());
        JsonElement poured = answer.GetProperty("corrections")[1];
        string water = poured.GetProperty("added_water").GetString()!;
        string page = await ada.Http.GetStringAsync($"/jars/1/correct?salt={Uri.EscapeDataString(poured.GetProperty("salt").GetString()!)}"
            + $"&water={Uri.EscapeDataString(water)}");
        Assert.Matches($"name=\"Input.AddedWater\"[^>]*value=\"{water}\"", page);
        HttpResponseMessage put = await ada.PutAsync("/api/v1/jars/1", new { salt = poured.GetProperty("salt").GetString(), added_water = water });
        Assert.Equal(HttpStatusCode.OK, put.StatusCode);
    }

    [Fact]
    public async Task Salt_ForgottenTheDayBeforeYesterday_IsToBeThrownOutAndNothingIsSaidToBeAdded()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        NodaTime.LocalDate today = NodaTime.LocalDate.FromDateTime(kitchen.Clock.GetUtcNow().UtcDateTime);
        await ada.PutUpAsync(("packed_at", $"{today.PlusDays(-2):uuuu-MM-dd}"));
        JsonElement answer = await ada.GetAsync("/api/v1/jars/1/salt?happened=Forgotten");
        Assert.True(answer.GetProperty("throw_out_advised").GetBoolean());
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("salt_to_add_grams").ValueKind);
        Assert.Contains("Throw it out", await ada.Http.GetStringAsync("/jars/1/salt?happened=Forgotten"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Salt_OfAJarOfLastYear_ItsCorrectionIsTakenWithoutAskingAboutItsAge()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        NodaTime.LocalDate today = NodaTime.LocalDate.FromDateTime(kitchen.Clock.GetUtcNow().UtcDateTime);
        HttpResponseMessage put = await ada.PostAsync("/api/v1/jars", new { what = "cabbage", how_much = "900g", salt = "4%", vessel = "1l",
            place = "kitchen counter", packed_at = $"{today.PlusDays(-300):uuuu-MM-dd}", it_is_right = true });
        Assert.True(put.IsSuccessStatusCode);
        JsonElement answer = await ada.GetAsync("/api/v1/jars/1/salt?happened=TooMuch&intended=2.25");
        string salt = answer.GetProperty("corrections")[0].GetProperty("salt").GetString()!;
        string address = $"/jars/1/correct?salt={Uri.EscapeDataString(salt)}";
        string page = await ada.Http.GetStringAsync(address);
        HttpResponseMessage sent = await ada.SendFormAsync(address, "correct", [.. Filled(page)]);
        Assert.Equal((HttpStatusCode.Found, "/jars/1?corrected=1"), (sent.StatusCode, sent.Headers.Location?.PathAndQuery));
    }

    private static IEnumerable<(string, string)> Filled(string page)
    {
        foreach (Match input in Regex.Matches(page, "<input[^>]*name=\"(Input\\.[^\"]+)\"[^>]*>"))
            if (!input.Value.Contains("checkbox", StringComparison.Ordinal))
                yield return (input.Groups[1].Value, Value(input.Value));
        foreach (Match list in Regex.Matches(page, "<select[^>]*name=\"(Input\\.[^\"]+)\".*?</select>", RegexOptions.Singleline))
            yield return (list.Groups[1].Value, Value(Regex.Match(list.Value, "<option[^>]*selected[^>]*>").Value));

        static string Value(string tag) => WebUtility.HtmlDecode(Regex.Match(tag, "value=\"([^\"]*)\"").Groups[1].Value);
    }

    [Fact]
    public async Task Salt_WhatCannotBe_IsRefusedByFieldOnPageAndByTheApi()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync();
        foreach (string asked in new[] { "happened=sideways", "happened=TooMuch&went_in=lots", "happened=TooMuch&went_in=5+%25&intended=1" })
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await ada.Http.GetAsync($"/api/v1/jars/1/salt?{asked}")).StatusCode);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await ada.Http.GetAsync($"/jars/1/salt?{asked}")).StatusCode);
        }
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await ada.Http.GetAsync("/api/v1/jars/1/salt")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await ada.Http.GetAsync("/api/v1/jars/9/salt?happened=Forgotten")).StatusCode);
    }

    [Fact]
    public async Task Brine_ByTheSalometerAndBack_IsTheSame()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        JsonElement read = await ada.GetAsync("/api/v1/salt/brine?scale=Salometer&reading=20&temperature=60+F");
        Assert.Equal(5.279, read.GetProperty("percent").GetDouble(), 3);
        JsonElement shown = await ada.GetAsync("/api/v1/salt/brine?percent=5.279&temperature=60+F");
        Assert.Equal(20, shown.GetProperty("degrees_salometer").GetDouble(), 2);
        Assert.Contains("Juice", shown.GetProperty("caution").GetString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await ada.Http.GetAsync("/api/v1/salt/brine")).StatusCode);
    }
}
