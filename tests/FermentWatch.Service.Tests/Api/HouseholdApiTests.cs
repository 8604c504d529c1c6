using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.RunningTests;
using static System.Globalization.CultureInfo;

namespace FermentWatch.Service.Tests.Api;

public class HouseholdApiTests
{
    [Theory]
    [InlineData("Europe/Atlantis", "07:00", "19:00",
        "time zone: Europe/Atlantis cannot be used. Enter a name of the tz database, such as Europe/Vienna.")]
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
        Assert.Equal(("America/New_York", round),
            (household.GetProperty("time_zone").GetString(), household.GetProperty("round_at").GetString()![..5]));
    }

    [Fact]
    public async Task Write_TwelveHoursAndAWeekFromSunday_IsHowPagesReadFromThenOn()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("packed_at", kitchen.Clock.GetUtcNow().AddDays(-3).ToString("yyyy-MM-dd'T'15:05", InvariantCulture)));
        await kitchen.SettleAsync();
        Assert.Contains(" 15:05<", await script.Http.GetStringAsync("/jars/1"), StringComparison.Ordinal);
        Assert.Equal("Mon", FirstDay(await script.Http.GetStringAsync("/week-sheet")));

        object written = new { name = "Number Nine", time_zone = "UTC", round_at = "07:00", evening_at = "19:00", clock_face = "TwelveHours",
            week_start = "sunday" };
        Assert.Equal(HttpStatusCode.OK, (await script.PutAsync("/api/v1/household", written)).StatusCode);

        string page = await script.Http.GetStringAsync("/jars/1");
        Assert.Contains(" 3:05 pm<", page, StringComparison.Ordinal);
        Assert.DoesNotContain("15:05", page, StringComparison.Ordinal);
        Assert.Equal("Sun", FirstDay(await script.Http.GetStringAsync("/week-sheet")));
        Assert.Equal("TwelveHours", (await script.GetAsync("/api/v1/jars/1/course")).GetProperty("reads_times_by").GetString());
    }

    [Fact]
    public async Task Write_ADayThatIsNone_IsRefusedWithOneThatIs()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        HttpResponseMessage answer = await script.PutAsync("/api/v1/household",
            new { name = "Number Nine", time_zone = "UTC", round_at = "07:00", evening_at = "19:00", week_start = "Washday" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("week start: Washday cannot be used. Enter a day of the week, such as Monday.", await answer.Content.ReadAsStringAsync(),
            StringComparison.Ordinal);
    }

    /// <summary>The first day that heads a column of the week sheet.</summary>
    private static string FirstDay(string page) => Regex.Match(page, """<th scope="col">(\w{3}) \d""").Groups[1].Value;

    private static Task<HttpResponseMessage> PutAsync(Script script, string zone, string round, string evening) =>
        script.Http.PutAsJsonAsync("/api/v1/household", new { name = "Number Nine", time_zone = zone, round_at = round, evening_at = evening });
}
