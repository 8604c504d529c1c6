using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.RunningTests;
using Ical.Net;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.Tests.Api;

/// <summary>A plan by the API, on its page and in a calendar.</summary>
public sealed partial class PlanTests : IAsyncLifetime
{
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

    private string Asked => $"servings=14&eaters=1&serving=1/2+cup&from={Day(60)}&until={Day(120)}&place=kitchen+counter&temperature=19+C"
        + "&store=refrigerator&room=20+x+1+qt&vessels=1+qt&days=Saturday&days=Sunday";

    [Fact]
    public async Task Plan_Asked_AnswersByApiPageAndCalendarAlike()
    {
        JsonElement plan = await _ada.GetAsync($"/api/v1/plan?{Asked}");
        Assert.True(plan.GetProperty("is_met").GetBoolean());
        JsonElement[] starts = [.. plan.GetProperty("starts").EnumerateArray()];
        Assert.NotEmpty(starts);
        Assert.All(starts, start => Assert.Equal(19, start.GetProperty("expected_celsius").GetDouble()));
        Assert.Equal(plan.GetProperty("vegetables_prepared_kilograms").GetDouble() * 22.5, plan.GetProperty("salt_grams").GetDouble(), 0.01);

        string page = await _ada.Http.GetStringAsync($"/plan?{Asked}");
        Assert.Contains(plan.GetProperty("words").GetString()!, WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.Equal(starts.Length, PutUpLink().Count(page));

        HttpResponseMessage file = await _ada.Http.GetAsync($"/api/v1/plan.ics?{Asked}");
        Assert.Equal("text/calendar", file.Content.Headers.ContentType!.MediaType);
        Calendar calendar = Calendar.Load(await file.Content.ReadAsStringAsync())!;
        Assert.Equal(3 * starts.Length, calendar.Events.Count);
        Assert.Equal(starts.Select(start => start.GetProperty("date").GetString()), calendar.Events
            .Where(each => each.Uid!.StartsWith("plan-start", StringComparison.Ordinal))
            .Select(each => LocalDatePattern.Iso.Format(LocalDate.FromDateOnly(each.Start!.Date))));
    }

    [Fact]
    public async Task Plan_OneTapFromAStart_FillsThePutUpFormIn()
    {
        string page = await _ada.Http.GetStringAsync($"/plan?{Asked}");
        string address = WebUtility.HtmlDecode(PutUpLink().Match(page).Groups["address"].Value);
        string form = await _ada.Http.GetStringAsync("/" + address);
        int jars = int.Parse(Regex.Match(address, @"how_many=(\d+)").Groups[1].Value);
        Assert.Matches($"name=\"Input.HowMany\"[^>]*value=\"{jars}\"", form);
        Assert.Matches("name=\"Input.HowMuch\"[^>]*value=\"804 g\"", form);
        Assert.Matches("<option value=\"kitchen counter\" selected", form);
    }

    [Fact]
    public async Task Plan_WrongFields_AreRefusedByNameAndThePageKeepsWhatWasTyped()
    {
        HttpResponseMessage answer = await _ada.Http.GetAsync("/api/v1/plan?servings=-3&vessels=20+x+5+kg");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        using JsonDocument problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
        Assert.Equal(["servings", "vessels"], problem.RootElement.GetProperty("errors").EnumerateObject().Select(error => error.Name).Order());
        HttpResponseMessage page = await _ada.Http.GetAsync("/plan?servings=-3&vessels=20+x+5+kg");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, page.StatusCode);
        Assert.Contains("value=\"20 x 5 kg\"", await page.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_ThatCannotBeMet_SaysTheNearestAsALinkThatCan()
    {
        string page = await _ada.Http.GetStringAsync($"/plan?{Asked.Replace($"from={Day(60)}", $"from={Day(1)}", StringComparison.Ordinal)}");
        Assert.Contains("What falls short", page, StringComparison.Ordinal);
        string nearest = WebUtility.HtmlDecode(Regex.Match(page, "<a href=\"(plan\\?[^\"]+)\">It can be met").Groups[1].Value);
        Assert.True((await _ada.GetAsync("/api/v1/" + nearest)).GetProperty("is_met").GetBoolean());
    }

    [Fact]
    public async Task Plan_AChildAsks_SeesItAndNothingIsWritten()
    {
        using Script lena = await Script.ChildAsync(_kitchen);
        Assert.Equal(HttpStatusCode.OK, (await lena.Http.GetAsync($"/plan?{Asked}")).StatusCode);
        Assert.Empty((await _ada.GetAsync("/api/v1/jars")).EnumerateArray());
    }

    [Fact]
    public async Task Plan_AskedWithOddWords_IsNeverTheServicesFault()
    {
        foreach (string odd in new[] { "%00", "9999-12-31", "0001-01-01", "1e999", "NaN", "-1", "%F0%9F%98%80",
            new string('9', 2000), "1,2,3", "<b>" })
            foreach (string field in Kitchen.Planning.PlanForm.Fields.Select(field => field.Name))
                Assert.True((int)(await _ada.Http.GetAsync($"/api/v1/plan?{field}={odd}&until={Day(50)}")).StatusCode < 500, $"{field}={odd}");
    }

    private string Day(int ahead) => LocalDatePattern.Iso.Format(_kitchen.Now.InUtc().Date.PlusDays(ahead));

    [GeneratedRegex("href=\"(?<address>put-up\\?what=[^\"]+)\"")]
    private static partial Regex PutUpLink();
}
