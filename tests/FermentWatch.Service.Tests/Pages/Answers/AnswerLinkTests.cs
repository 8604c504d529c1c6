using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Notices.Tests.Mail;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using Microsoft.Extensions.DependencyInjection;
using MimeKit;
using NodaTime;

namespace FermentWatch.Service.Tests.Pages.Answers;

/// <summary>Links that answer a round, followed by somebody who has not signed in.</summary>
public sealed partial class AnswerLinkTests : IAsyncLifetime
{
    private RunningKitchen _kitchen = null!;
    private Script _ada = null!, _stranger = null!;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _ada = await Script.SignedInAsync(_kitchen);
        _stranger = Script.Stranger(_kitchen);
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        _stranger.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task Get_HoweverOften_AnswersForNobodyAndTheButtonDoesOnce()
    {
        string path = Links(await MorningAsync()).First().Path;
        for (int scan = 0; scan < 3; scan++)
            Assert.Equal(HttpStatusCode.OK, (await _stranger.Http.GetAsync(path)).StatusCode);
        await _stranger.Http.SendAsync(new HttpRequestMessage(HttpMethod.Head, path));
        Assert.Empty(await LooksAsync());

        string page = await PressAsync(path);
        Assert.Contains("Thank you, Mira.", page, StringComparison.Ordinal);
        Assert.Equal([(1, "Mira"), (2, "Mira"), (3, "Mira")], (await LooksAsync()).Select(look => (look.Jar, look.Look.By)));

        Assert.Contains("Answered already", await _stranger.Http.GetStringAsync(path), StringComparison.Ordinal);
        Assert.Equal(0, await FiledByApiAsync(path));
        Assert.Equal(3, (await LooksAsync()).Count);
    }

    [Fact]
    public async Task Press_FormOfAPageThatWasOpenTwice_IsFiledOnce()
    {
        string path = Links(await MorningAsync()).First().Path;
        Dictionary<string, string> first = await FormAsync(path), second = await FormAsync(path);
        await Task.WhenAll(_stranger.Http.PostAsync(path, new FormUrlEncodedContent(first)),
            _stranger.Http.PostAsync(path, new FormUrlEncodedContent(second)));
        Assert.Equal(3, (await LooksAsync()).Count);
    }

    [Fact]
    public async Task Press_WithoutTheFormsToken_IsNotTaken()
    {
        string path = Links(await MorningAsync()).First().Path;
        Dictionary<string, string> form = await FormAsync(path);
        form.Remove("__RequestVerificationToken");
        Assert.Equal(HttpStatusCode.BadRequest, (await _stranger.Http.PostAsync(path, new FormUrlEncodedContent(form))).StatusCode);
        Assert.Empty(await LooksAsync());
    }

    [Fact]
    public async Task Press_OfOneShelf_LeavesTheOthersToTheLinkOfTheRound()
    {
        AnswerLink[] links = [.. Links(await MorningAsync())];
        Assert.Equal([null, "kitchen counter", "cellar"], links.Select(link => link.Shelf));
        Assert.Equal(1, await FiledByApiAsync(links[2].Path));
        Assert.Equal(3, Assert.Single(await LooksAsync()).Jar);
        Assert.Equal(2, await FiledByApiAsync(links[0].Path));
        Assert.Equal(0, await FiledByApiAsync(links[1].Path));
    }

    [Fact]
    public async Task Press_JarSomebodySawTroubleAt_LeavesItOut()
    {
        string path = Links(await MorningAsync()).First().Path;
        await _ada.PostAsync("/api/v1/round/today/seen", new { jar = 2, what = "BrineLow" });
        Assert.Equal(2, await FiledByApiAsync(path));
        Assert.Equal([1, 3], (await LooksAsync()).Select(look => look.Jar));
    }

    [Fact]
    public async Task Press_AnswerThatWasTakenBack_IsNotGivenAgain()
    {
        string path = Links(await MorningAsync()).First().Path;
        await FiledByApiAsync(path);
        IJarBook jars = _kitchen.Services.GetRequiredService<IJarBook>();
        await jars.CorrectAsync((await LooksAsync())[0].Look.Id, _kitchen.Now, "Ada", null, default);
        Assert.Equal(0, await FiledByApiAsync(path));
        Assert.Equal([2, 3], (await LooksAsync()).Select(look => look.Jar));
    }

    [Fact]
    public async Task Later_SaidTwice_IsAskedAgainOnceInTwoHours()
    {
        Notice morning = await MorningAsync();
        string path = Links(morning).First().Path;
        Dictionary<string, string> form = await FormAsync(path);
        form["Input.Later"] = "true";
        HttpResponseMessage pressed = await _stranger.Http.PostAsync(path, new FormUrlEncodedContent(form));
        Assert.Contains("Asked again in two hours.", await _stranger.Http.GetStringAsync(pressed.Headers.Location), StringComparison.Ordinal);
        JsonElement said = await (await _stranger.PostAsync(Api(path), new { later = true })).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal((0, (morning.DueAt + Duration.FromHours(2)).ToString()),
            (said.GetProperty("filed").GetInt32(), said.GetProperty("asked_again_at").GetString()));

        Notice again = Assert.Single(await Book.LatestAsync(10, default), notice => notice.Key.StartsWith("later/", StringComparison.Ordinal));
        Assert.Equal((morning.Title, morning.Body, morning.Person, morning.DueAt + Duration.FromHours(2)),
            (again.Title, again.Body, again.Person, again.DueAt));
        Assert.Empty(await LooksAsync());
        Assert.Equal(3, await FiledByApiAsync(Links(again).First().Path));
    }

    [Fact]
    public async Task Later_AnsweredMeanwhile_IsNotAskedAgain()
    {
        string path = Links(await MorningAsync()).First().Path;
        await _stranger.PostAsync(Api(path), new { later = true });
        Assert.Equal(3, await FiledByApiAsync(path));
        _kitchen.Clock.Advance(TimeSpan.FromHours(2));
        await _kitchen.SettleAsync();
        Notice again = Assert.Single(await Book.LatestAsync(10, default), notice => notice.Key.StartsWith("later/", StringComparison.Ordinal));
        Assert.Equal((NoticeState.Answered, 1), (again.State, again.Attempts));
    }

    [Fact]
    public async Task Later_TwoHoursBeforeMidnight_IsNotAskedAgain()
    {
        string path = Links(await MorningAsync()).First().Path;
        _kitchen.Clock.Advance(TimeSpan.FromHours(15));
        JsonElement said = await (await _stranger.PostAsync(Api(path), new { later = true })).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal(JsonValueKind.Null, said.GetProperty("asked_again_at").ValueKind);
    }

    [Fact]
    public async Task Later_OnThePageOfTheRound_IsOfferedWhileOneIsAskedAndNotTwice()
    {
        await _ada.PostAsync("/api/v1/notice-routes", new { person = "Ada", channel = "Webhook", address = "http://127.0.0.1:9/" });
        await MorningAsync();
        string page = await _ada.Http.GetStringAsync("/");
        Assert.Contains("Later: ask me again in two hours", page, StringComparison.Ordinal);
        string form = LaterForm().Match(page).Value;
        var fields = HiddenInPage().Matches(form)
            .ToDictionary(field => field.Groups["name"].Value, field => WebUtility.HtmlDecode(field.Groups["value"].Value));
        HttpResponseMessage pressed = await _ada.Http.PostAsync("/", new FormUrlEncodedContent(fields));
        Assert.Contains("Asked again at 09:00.", await _ada.Http.GetStringAsync(pressed.Headers.Location), StringComparison.Ordinal);
        Assert.DoesNotContain("Later: ask me again", await _ada.Http.GetStringAsync("/"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Link_OnTheNextDay_HasExpiredAndAnswersNothing()
    {
        string path = Links(await MorningAsync()).First().Path;
        _kitchen.Clock.Advance(TimeSpan.FromHours(17));
        HttpResponseMessage page = await _stranger.Http.GetAsync(path);
        Assert.Equal(HttpStatusCode.Gone, page.StatusCode);
        Assert.Contains("This link was for another day", await page.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Gone, (await _stranger.PostAsync(Api(path), new { })).StatusCode);
        Assert.Empty(await LooksAsync());
    }

    [Fact]
    public async Task Link_Forged_OpensNothing()
    {
        string path = Links(await MorningAsync()).First().Path;
        string changed = path[..^4] + (path.EndsWith("AAAA", StringComparison.Ordinal) ? "BBBB" : "AAAA");
        foreach (string forged in new[] { changed, "/answer/x", $"/answer/{Guid.NewGuid():N}" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await _stranger.Http.GetAsync(forged)).StatusCode);
            Assert.Equal(HttpStatusCode.NotFound, (await _stranger.PostAsync(Api(forged), new { })).StatusCode);
        }
    }

    [Fact]
    public async Task Link_Open_OpensNothingButItsAnswer()
    {
        string path = Links(await MorningAsync()).First().Path;
        await PressAsync(path);
        Assert.Equal(HttpStatusCode.Redirect, (await _stranger.Http.GetAsync("/")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await _stranger.Http.GetAsync("/api/v1/jars")).StatusCode);
    }

    [Fact]
    public async Task Evening_AfterSomeWereLookedAt_AsksForTheRest()
    {
        Notice morning = await MorningAsync();
        await FiledByApiAsync(Links(morning).ElementAt(2).Path);
        _kitchen.Clock.Advance(TimeSpan.FromHours(12));
        await _kitchen.SettleAsync();
        Notice evening = (await Book.LatestAsync(10, default)).Single(notice => notice.Key.StartsWith("evening/", StringComparison.Ordinal));
        Assert.Equal([1, 2], evening.Question!.Shelves.SelectMany(shelf => shelf.Jars));
        Assert.Equal(2, await FiledByApiAsync(Assert.Single(Links(evening)).Path));
    }

    [Fact]
    public async Task Round_ByARealMailServer_IsAnsweredFromTheLetter()
    {
        await using PostOffice post = PostOffice.Open();
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(
            ("Mail:Host", "localhost"), ("Mail:Port", post.Port.ToString(CultureInfo.InvariantCulture)), ("Mail:Tls", "None"),
            ("Mail:From", "kitchen@example.org"),
            ("Web:PublicAddress", "https://kitchen.example.org"));
        using Script ada = await Script.SignedInAsync(kitchen), stranger = Script.Stranger(kitchen);
        await PrepareAsync(kitchen, ada, "Email", "mira@example.org");

        MimeMessage letter = Assert.Single(post.Letters);
        Match link = LinkInLetter().Match(letter.TextBody!);
        Assert.True(link.Success, letter.TextBody);
        HttpResponseMessage answer = await stranger.PostAsync(Api(link.Groups["path"].Value), new { opened = true });
        Assert.Equal(3, (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("filed").GetInt32());
        await kitchen.SettleAsync();
        Assert.Single(post.Letters);
    }

    private INoticeBook Book => _kitchen.Services.GetRequiredService<INoticeBook>();

    private IEnumerable<AnswerLink> Links(Notice notice) => _kitchen.Services.GetRequiredService<INoticeLinks>().Of(notice);

    /// <summary>Three jars on two shelves, one person who is told, and the next round, at seven.</summary>
    private async Task<Notice> MorningAsync()
    {
        await PrepareAsync(_kitchen, _ada, "Webhook", "http://127.0.0.1:9/");
        return (await Book.LatestAsync(10, default)).Single(notice => notice.Person == "Mira");
    }

    private static async Task PrepareAsync(RunningKitchen kitchen, Script ada, string channel, string address)
    {
        await ada.PutUpAsync(("how_many", "2"));
        await ada.PutUpAsync(("place", "cellar"));
        Assert.Equal(HttpStatusCode.Created, (await ada.PostAsync("/api/v1/notice-routes", new { person = "Mira", channel, address })).StatusCode);
        Instant sevenTomorrow = (kitchen.Now.InUtc().Date.PlusDays(1) + new LocalTime(7, 0)).InUtc().ToInstant();
        kitchen.Clock.SetUtcNow(sevenTomorrow.ToDateTimeOffset());
        await kitchen.SettleAsync();
    }

    private async Task<List<(int Jar, Look Look)>> LooksAsync() =>
        [.. (await _kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(default))
            .SelectMany(jar => jar.Standing.OfType<Look>().Select(look => (jar.Number, look)))];

    private async Task<int> FiledByApiAsync(string path)
    {
        HttpResponseMessage answer = await _stranger.PostAsync(Api(path), new { });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("filed").GetInt32();
    }

    /// <summary>Opens the page, presses its first button and gives the page that follows.</summary>
    private async Task<string> PressAsync(string path)
    {
        HttpResponseMessage pressed = await _stranger.Http.PostAsync(path, new FormUrlEncodedContent(await FormAsync(path)));
        Assert.Equal(HttpStatusCode.Redirect, pressed.StatusCode);
        return await _stranger.Http.GetStringAsync(pressed.Headers.Location);
    }

    private async Task<Dictionary<string, string>> FormAsync(string path)
    {
        string page = await _stranger.Http.GetStringAsync(path);
        Assert.Equal(2, ButtonInPage().Count(page));
        return HiddenInPage().Matches(page)
            .ToDictionary(field => field.Groups["name"].Value, field => WebUtility.HtmlDecode(field.Groups["value"].Value));
    }

    private static string Api(string path) => path.Replace("/answer/", "/api/v1/answers/", StringComparison.Ordinal);

    [GeneratedRegex("<input type=\"hidden\" name=\"(?<name>[^\"]+)\" value=\"(?<value>[^\"]*)\"")]
    private static partial Regex HiddenInPage();

    [GeneratedRegex("<form[^>]*>(?:(?!</form>).)*Later: ask me again.*?</form>", RegexOptions.Singleline)]
    private static partial Regex LaterForm();

    [GeneratedRegex("<button")]
    private static partial Regex ButtonInPage();

    [GeneratedRegex("All well: https://kitchen\\.example\\.org(?<path>/answer/\\S+)")]
    private static partial Regex LinkInLetter();
}
