using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

public class HouseholdApiTests
{
    [Theory]
    [InlineData("Europe/Atlantis", "07:00", "19:00", "time zone: Europe/Atlantis cannot be used. Enter a name of the tz database, such as Europe/Vienna.")]
    [InlineData("", "07:00", "19:00", "time zone: Enter time zone, such as Europe/Vienna.")]
    [InlineData("Europe/Vienna", "25:00", "19:00", "morning round: 25:00 cannot be used. Enter a time of day, such as 07:00.")]
    [InlineData("Europe/Vienna", "07:00", "06:59", "evening: 06:59 cannot be used. Enter a time after the morning round.")]
    public async Task Write_WrongZoneOrHour_Answers422WithAClearWordAndChangesNothing(string zone, string round, string evening, string word)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        string before = (await script.GetAsync("/api/v1/household")).GetRawText();

        HttpResponseMessage answer = await PutAsync(script, zone, round, evening);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        JsonElement errors = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("errors");
        Assert.Equal([word], errors.EnumerateObject().SelectMany(field => field.Value.EnumerateArray()).Select(each => each.GetString()));
        Assert.Equal(before, (await script.GetAsync("/api/v1/household")).GetRawText());
    }

    [Theory]
    [InlineData("02:30")]
    [InlineData("01:30")]
    public async Task Write_HourOfAGapOrAFold_IsTaken(string round)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);

        HttpResponseMessage answer = await PutAsync(script, "America/New_York", round, "19:00");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        JsonElement household = await script.GetAsync("/api/v1/household");
        Assert.Equal(("America/New_York", round), (household.GetProperty("time_zone").GetString(), household.GetProperty("round_at").GetString()![..5]));
    }

    private static Task<HttpResponseMessage> PutAsync(Script script, string zone, string round, string evening) =>
        script.Http.PutAsJsonAsync("/api/v1/household", new { name = "Number Nine", time_zone = zone, round_at = round, evening_at = evening });
}
