using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.Acts.Members;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using FermentWatch.Web.Accounts;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Service.Tests.Accounts;

/// <summary>Whoever was removed, made a child or given another password is that at the next request, everywhere.</summary>
public sealed class LeavingTests : IAsyncLifetime
{
    private const string Routes = "/api/v1/notice-routes";

    private RunningKitchen _kitchen = null!;
    private Script _ada = null!, _kim = null!;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync(("Mqtt:Enabled", "false"));
        _ada = await Script.SignedInAsync(_kitchen);
        _kim = await Script.SignedInAsync(_kitchen, "Kim", "Kim");
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        _kim.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task Removed_AdultWithEveryDoorOpen_IsOutOfAllOfThemAndWhatIsLeftIsListedForAnAdult()
    {
        await _kim.PostAsync(Routes, new { person = "Kim", channel = "Webhook", address = "http://127.0.0.1:9/kim" });
        await _kim.PostAsync(Routes, new { person = "Ada", channel = "Webhook", address = "http://127.0.0.1:9/ada" });
        string calendar = await CalendarAsync(_kim), link = await AnswerLinkAsync("Kim");
        string guest = await GuestLinkAsync(_kim);
        await _kim.PostAsync("/api/v1/gateways", new { name = "attic", filter = "zigbee/#" });
        using Script stranger = Script.Stranger(_kitchen);
        foreach (string door in new[] { calendar, link, guest })
            Assert.Equal(HttpStatusCode.OK, (await stranger.Http.GetAsync(door)).StatusCode);

        await DeskAsync(desk => desk.RemoveAsync("Kim", CancellationToken.None));

        Assert.Equal(HttpStatusCode.Unauthorized, (await _kim.Http.GetAsync("/api/v1/jars")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await _kim.PostAsync(Routes, new { })).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Http.GetAsync(calendar)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Http.GetAsync(link)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound,
            (await stranger.PostAsync(link.Replace("/answer/", "/api/v1/answers/", StringComparison.Ordinal), new { opened = false })).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await stranger.Http.GetAsync(guest)).StatusCode);
        Assert.Equal(["Ada"], (await _ada.GetAsync(Routes)).EnumerateArray().Select(route => route.GetProperty("person").GetString()));
        Assert.Contains("Added by Kim, who is no adult of this household any more", await _ada.Http.GetStringAsync("/notices"),
            StringComparison.Ordinal);
        Assert.Contains("Made by Kim, who is no adult of this household any more", await _ada.Http.GetStringAsync("/sensors"),
            StringComparison.Ordinal);

        await _ada.SendFormAsync("/sensors", "gateway-keep-attic");
        Assert.Equal("Ada", Assert.Single(await _kitchen.Services.GetRequiredService<ISensorBook>().GatewaysAsync(default)).MadeBy);
        Assert.DoesNotContain("Made by Kim", await _ada.Http.GetStringAsync("/sensors"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Removed_AndAddedAgainUnderTheSameName_FindsNoOldDoorOpen()
    {
        string calendar = await CalendarAsync(_kim), link = await AnswerLinkAsync("Kim");
        await DeskAsync(desk => desk.RemoveAsync("Kim", CancellationToken.None));
        await DeskAsync(desk => desk.AddAsync("Kim", MemberRole.Child, Script.Password));
        Assert.Equal(HttpStatusCode.Unauthorized, (await _kim.Http.GetAsync("/api/v1/jars")).StatusCode);
        using Script stranger = Script.Stranger(_kitchen);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Http.GetAsync(calendar)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Http.GetAsync(link)).StatusCode);
    }

    [Fact]
    public async Task Removed_ChildWhoseNameIsGivenAgain_IsAnotherPerson()
    {
        await _ada.PutUpAsync();
        Guid seen = await ReportedByNewTomAsync("Film");
        await DeskAsync(desk => desk.RemoveAsync("Tom", CancellationToken.None));
        Guid own = await ReportedByNewTomAsync("PiecesUp", takesBack: seen, HttpStatusCode.UnprocessableEntity);

        IEnumerable<Sighting> standing = (await _kitchen.Services.GetRequiredService<IJarBook>().FindAsync(1, default))!.Standing.OfType<Sighting>();
        // Both are of one instant, in which no order is kept.
        Assert.Equal(new[] { seen, own }.Order(), standing.Select(each => each.Id).Order());
        Assert.Equal(2, standing.Select(each => each.ById).Distinct().Count());
    }

    /// <summary>A child named Tom joins, reports something of jar 1, tries to take an entry back, and its own takes back for certain.</summary>
    private async Task<Guid> ReportedByNewTomAsync(string what, Guid? takesBack = null, HttpStatusCode answered = default)
    {
        Assert.Empty(await DeskAsync(desk => desk.AddAsync("Tom", MemberRole.Child, Script.Password)));
        using Script tom = Script.Stranger(_kitchen);
        await tom.PostAsync("/api/v1/sign-in", new { user = "Tom", password = Script.Password });
        if (takesBack is { } other)
            Assert.Equal(answered, (await tom.PostAsync($"/api/v1/jars/1/observations/{other}/take-back", new { })).StatusCode);
        await tom.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "BrineLow" });
        await tom.PostAsync("/api/v1/round/today/seen", new { jar = 1, what });
        Jar jar = (await _kitchen.Services.GetRequiredService<IJarBook>().FindAsync(1, default))!;
        Guid Of(string kind) => jar.Standing.OfType<Sighting>().Last(each => each.Kind.ToString() == kind).Id;
        Assert.Equal(HttpStatusCode.NoContent, (await tom.PostAsync($"/api/v1/jars/1/observations/{Of("BrineLow")}/take-back", new { })).StatusCode);
        return Of(what);
    }

    [Fact]
    public async Task RoleChanged_ToChild_SignsInAgainAsOne()
    {
        await DeskAsync(desk => desk.SetRoleAsync("Kim", MemberRole.Child, CancellationToken.None));
        Assert.Equal(HttpStatusCode.Unauthorized, (await _kim.Http.GetAsync("/api/v1/jars")).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent,
            (await _kim.PostAsync("/api/v1/sign-in", new { user = "Kim", password = Script.Password })).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await _kim.PutUpAsync()).StatusCode);
        Assert.Single(await DeskAsync(desk => desk.SetRoleAsync(Script.User, MemberRole.Child, CancellationToken.None)));
    }

    [Fact]
    public async Task PasswordChanged_OnThePage_KeepsThisBrowserAndEndsTheOthersAndTheOpenDoors()
    {
        using Script tablet = Script.Stranger(_kitchen);
        await tablet.PostAsync("/api/v1/sign-in", new { user = "Kim", password = Script.Password });
        string calendar = await CalendarAsync(_kim), link = await AnswerLinkAsync("Kim");

        HttpResponseMessage wrong =
            await _kim.SendFormAsync("/password", "password", ("Input.Old", "not the password"), ("Input.New", "five dry cabbages"),
            ("Input.Again", "five dry cabbages"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await tablet.Http.GetAsync("/api/v1/jars")).StatusCode);
        HttpResponseMessage right =
            await _kim.SendFormAsync("/password", "password", ("Input.Old", Script.Password), ("Input.New", "five dry cabbages"),
            ("Input.Again", "five dry cabbages"));
        Assert.Equal(HttpStatusCode.Found, right.StatusCode);

        Assert.Equal(HttpStatusCode.OK, (await _kim.Http.GetAsync("/api/v1/jars")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await tablet.Http.GetAsync("/api/v1/jars")).StatusCode);
        using Script stranger = Script.Stranger(_kitchen);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Http.GetAsync(calendar)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Http.GetAsync(link)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized,
            (await stranger.PostAsync("/api/v1/sign-in", new { user = "Kim", password = Script.Password })).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent,
            (await stranger.PostAsync("/api/v1/sign-in", new { user = "Kim", password = "five dry cabbages" })).StatusCode);
    }

    [Fact]
    public async Task SignedOut_CookieThatWasCopied_IsDeadAndOtherBrowsersStay()
    {
        HttpResponseMessage signIn = await Script.Stranger(_kitchen).PostAsync("/api/v1/sign-in", new { user = "Kim", password = Script.Password });
        string cookie = signIn.Headers.GetValues("Set-Cookie").Single(each => each.StartsWith("fermentwatch=", StringComparison.Ordinal))
            .Split(';')[0];
        using HttpClient copy =
            new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = new Uri(_kitchen.Address) };
        copy.DefaultRequestHeaders.Add("Cookie", cookie);
        Assert.Equal(HttpStatusCode.OK, (await copy.GetAsync("/api/v1/jars")).StatusCode);

        HttpResponseMessage form = await copy.GetAsync("/household");
        string formCookie = form.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        string token = System.Text.RegularExpressions.Regex.Match(await form.Content.ReadAsStringAsync(),
            "action=\"sign-out\">.*?__RequestVerificationToken\" value=\"([^\"]+)\"",
            System.Text.RegularExpressions.RegexOptions.Singleline).Groups[1].Value;
        using var signOut = new HttpRequestMessage(HttpMethod.Post,
            "/sign-out") { Content = new FormUrlEncodedContent([new("__RequestVerificationToken", token)]) };
        signOut.Headers.Add("Cookie", $"{cookie}; {formCookie}");
        Assert.Equal(HttpStatusCode.Found, (await copy.SendAsync(signOut)).StatusCode);

        Assert.Equal(HttpStatusCode.Unauthorized, (await copy.GetAsync("/api/v1/jars")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await _kim.Http.GetAsync("/api/v1/jars")).StatusCode);
    }

    [Fact]
    public async Task AnswerLink_OfTheChildThatIsSignedIn_TakesTheAnswer()
    {
        using Script lena = await Script.ChildAsync(_kitchen);
        string link = await AnswerLinkAsync("Lena");
        HttpResponseMessage answer = await lena.SendFormAsync(link, "answer", ("Input.Sent", "true"));
        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Contains("Thank you, Lena.", await lena.Http.GetStringAsync(link + "?done=1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task NobodyOnRecord_CountsAsAnAdult()
    {
        IMemberBook members = _kitchen.Services.GetRequiredService<IMemberBook>();
        Roster roster = await members.RosterAsync(new LocalDate(2026, 1, 1), default);
        Assert.NotEqual(MemberRole.Adult, roster.Of("Somebody").Role);
        Assert.NotEqual(MemberRole.Adult,
            PersonRoles.Role(new System.Security.Claims.ClaimsPrincipal(new System.Security.Claims.ClaimsIdentity("test"))));
        await members.WriteAsync(new Duty { Person = "Somebody" }, default);
        Assert.NotEqual(MemberRole.Adult, (await members.AllAsync(default)).Single(member => member.Name == "Somebody").Role);
    }

    private async Task<IReadOnlyList<Kinetics.Refusal>> DeskAsync(Func<ManageMembers, Task<IReadOnlyList<Kinetics.Refusal>>> act)
    {
        await using AsyncServiceScope scope = _kitchen.Services.CreateAsyncScope();
        return await act(scope.ServiceProvider.GetRequiredService<ManageMembers>());
    }

    private static async Task<string> CalendarAsync(Script script) =>
        (await (await script.Http.PostAsync("/api/v1/calendar", null)).Content.ReadFromJsonAsync<JsonElement>()).GetProperty("path").GetString()!;

    private static async Task<string> GuestLinkAsync(Script script)
    {
        HttpResponseMessage made = await script.SendFormAsync("/household", "guest-new", ("Guest.Name", "Ben"), ("Guest.Days", "7"));
        return System.Text.RegularExpressions.Regex.Match(await made.Content.ReadAsStringAsync(), "/guest/[A-Za-z0-9_-]+").Value;
    }

    /// <summary>The link of the round that comes to a person on the next morning.</summary>
    private async Task<string> AnswerLinkAsync(string person)
    {
        await _ada.PostAsync(Routes, new { person, channel = "Mqtt", address = $"kitchen/{person}" });
        await _ada.PutUpAsync();
        _kitchen.Clock.SetUtcNow((_kitchen.Now.InUtc().Date.PlusDays(1) + new LocalTime(7, 0)).InUtc().ToDateTimeOffset());
        await _kitchen.SettleAsync();
        Notice round = (await _kitchen.Services.GetRequiredService<INoticeBook>().LatestAsync(10, default))
            .First(notice => notice.Person == person && notice.Question is not null);
        return _kitchen.Services.GetRequiredService<INoticeLinks>().Of(round)[0].Path;
    }
}
