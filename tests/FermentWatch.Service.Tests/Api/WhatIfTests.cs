using System.Net;
using System.Text.Json;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

/// <summary>What would become of a jar, asked by a script as on the page.</summary>
public class WhatIfTests
{
    [Fact]
    public async Task WhatIf_JarOnTheCounter_IsLaterInTheCellarAndSaysHowItIsWhenItIsChilled()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync();
        await kitchen.SettleAsync();
        NodaTime.LocalDate today = NodaTime.LocalDate.FromDateTime(kitchen.Clock.GetUtcNow().UtcDateTime);

        JsonElement answer = await ada.GetAsync($"/api/v1/jars/1/what-if?chill={today.PlusDays(6):uuuu-MM-dd}&ready={today.PlusDays(50):uuuu-MM-dd}");

        JsonElement[] moved = [.. answer.GetProperty("moved").EnumerateArray()];
        Assert.Equal("kitchen counter", moved[0].GetProperty("place").GetString());
        Assert.Equal("ready by then nine times in ten", moved[0].GetProperty("ready_by_words").GetString());
        double Days(string place) => moved.Single(each => each.GetProperty("place").GetString() == place)
            .GetProperty("acid_line").GetProperty("days_p50").GetDouble();
        Assert.True(Days("cellar") > Days("kitchen counter"));
        JsonElement chilled = answer.GetProperty("chilled");
        Assert.Equal($"{today.PlusDays(6):uuuu-MM-dd}", answer.GetProperty("chilled_on").GetString());
        Assert.InRange(chilled.GetProperty("then").GetProperty("day").GetDouble(), 5, 7);
        Assert.True(answer.GetProperty("gas_litres_p90").GetDouble() > answer.GetProperty("gas_litres_p50").GetDouble());
    }

    [Fact]
    public async Task WhatIf_DayThatIsNone_SaysWhatWouldBeRight()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync();
        await kitchen.SettleAsync();
        HttpResponseMessage answer = await ada.Http.GetAsync("/api/v1/jars/1/what-if?chill=soon");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("where the forecast ends, would be right", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await ada.Http.GetAsync("/api/v1/jars/9/what-if")).StatusCode);
    }
}
