using System.Text.Json;
using FermentWatch.Kitchen.Observations;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace FermentWatch.Browser.Tests;

/// <summary>The round in a cellar without reception: kept on the phone, sent when back, once, and never said to be written down before it
/// is.</summary>
public sealed partial class OfflineTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const string NotSent = "1 entry on this phone is not sent yet.", Sent = "Sent, and written down.",
        OutOfReach = "The kitchen is out of reach.";

    private static readonly DateTimeZone Vienna = DateTimeZoneProviders.Tzdb["Europe/Vienna"];

    [Fact]
    public async Task Round_OpenedYesterday_IsAnsweredInTheCellarAndSentWhenBackForTheDayItWasLookedAt()
    {
        await using Phone phone = await PhoneAsync(jars: 3);
        phone.Wire.Cut();
        phone.Kitchen.Clock.Advance(TimeSpan.FromDays(1));
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        Assert.StartsWith(OutOfReach + " This page is as it stood on ", await phone.Page.InnerTextAsync("#kept-page"), StringComparison.Ordinal);
        await phone.Page.GetByRole(AriaRole.Checkbox, new() { Name = "Jar 2" }).CheckAsync();
        await phone.Page.GetByRole(AriaRole.Radiogroup, new() { Name = "What is not well with jar 2" })
            .GetByRole(AriaRole.Radio, new() { Name = "Film" }).CheckAsync();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "All well but 2" }).ClickAsync();

        await phone.Page.GetByText(NotSent).WaitForAsync();
        Assert.Contains("all well but 2 (film)", await phone.Page.InnerTextAsync("#unsent"), StringComparison.Ordinal);
        Assert.Contains("Kept on this phone, not sent yet.", await phone.Page.InnerTextAsync("#unsent"), StringComparison.Ordinal);
        Assert.Empty(await phone.ObservationsAsync());
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        await phone.Page.GetByText(NotSent).WaitForAsync();

        phone.Wire.Mend();
        await phone.SendAsync();

        LocalDate today = phone.Kitchen.Now.InZone(Vienna).Date;
        IReadOnlyList<(int Jar, Observation What)> filed = await phone.ObservationsAsync();
        Assert.Equal([(1, "Look"), (2, "Sighting"), (3, "Look")], filed.Select(each => (each.Jar, each.What.GetType().Name)));
        Assert.All(filed, each => Assert.Equal(today, each.What.At.InZone(Vienna).Date));
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "What it came to" }).ClickAsync();
        await phone.Page.GetByText("Skim it off with a clean spoon").First.WaitForAsync();
        await phone.Page.GotoAsync(phone.Wire.Address + "/unsent");
        await phone.Page.GetByText("Nothing waits on this phone.").WaitForAsync();
    }

    [Fact]
    public async Task Round_AnsweredFromTheSameKeptPageOnTwoDays_IsTwoLooks()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        phone.Wire.Cut();
        for (int day = 0; day < 2; day++)
        {
            await phone.Page.GotoAsync(phone.Wire.Address + "/");
            await phone.Page.GetByRole(AriaRole.Button, new() { Name = "All well" }).ClickAsync();
            await phone.Page.GetByText(NotSent).WaitForAsync();
            phone.Wire.Mend();
            await phone.SendAsync();
            await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Seen" }).ClickAsync();
            phone.Wire.Cut();
            phone.Kitchen.Clock.Advance(TimeSpan.FromDays(1));
        }
        Assert.Equal(2, (await phone.ObservationsAsync()).Select(each => each.What.At.InZone(Vienna).Date).Distinct().Count());
    }

    [Fact]
    public async Task Round_NetworkBreaksInTheMiddleOfTheAnswer_IsSentAgainAndWrittenOnce()
    {
        await using Phone phone = await PhoneAsync(jars: 2);
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "All well" }).WaitForAsync();
        await phone.KeptAsync();
        phone.Wire.CutInTheAnswerToTheNextForm();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "All well" }).ClickAsync();
        await phone.Page.GetByText(NotSent).WaitForAsync();
        Assert.Equal(2, (await phone.ObservationsAsync()).Count);

        phone.Wire.Mend();
        await phone.SendAsync();

        Assert.Equal([1, 2], (await phone.ObservationsAsync()).Select(each => each.Jar));
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "What it came to" }).ClickAsync();
        await phone.Page.GetByText("Written down: all well at 1").WaitForAsync();
    }

    [Fact]
    public async Task Ph_TypedWhileTheNetworkIsCut_IsNotLostAndSentOnce()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        await phone.Page.GotoAsync(phone.Wire.Address + "/jars/1/ph");
        await phone.Page.GetByLabel("pH", new() { Exact = true }).FillAsync("3.9");
        await phone.Page.ChooseAsync("Meter");
        phone.Wire.Cut();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        await phone.Page.GetByText("pH of jar 1: 3.9").WaitForAsync();
        Assert.Empty(await phone.ObservationsAsync());

        phone.Wire.Mend();
        await phone.SendAsync();
        await phone.Page.ReloadAsync();
        await phone.Page.GetByText(Sent).WaitForAsync();

        Assert.Equal(3.9, Assert.IsType<PhMeasurement>(Assert.Single(await phone.ObservationsAsync()).What).Ph);
    }

    [Fact]
    public async Task PutUp_AnswerLostOnTheWay_IsSentAgainByItselfAndPutUpOnce()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        await phone.Page.GotoAsync(phone.Wire.Address + "/put-up");
        await phone.Page.GetByLabel("How much in each jar").FillAsync("800 g");
        await phone.Page.GetByLabel("How many alike").FillAsync("2");
        phone.Wire.CutInTheAnswerToTheNextForm();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        await phone.Page.GetByText("Put up: cabbage, 800 g").WaitForAsync();
        Assert.Equal(3, (await phone.JarsAsync()).Count);

        phone.Wire.Mend();
        await phone.SendAsync();

        Assert.Equal([1, 2, 3], (await phone.JarsAsync()).Select(jar => jar.Number));
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "What it came to" }).ClickAsync();
        await phone.Page.UntilAtAsync(address => address.EndsWith("/jars?put-up=2,3", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ph_ThatIsNoPh_IsNotSaidToBeWrittenAndComesBackFilledIn()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        await phone.Page.GotoAsync(phone.Wire.Address + "/jars/1/ph");
        await phone.Page.GetByLabel("pH", new() { Exact = true }).FillAsync("39");
        await phone.Page.ChooseAsync("Meter");
        phone.Wire.Cut();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        await phone.Page.GetByText("pH of jar 1: 39").WaitForAsync();
        phone.Wire.Mend();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Send now" }).ClickAsync();
        await phone.Page.GetByText("something in it was not right").WaitForAsync();
        Assert.Equal(0, await phone.Page.GetByText(Sent).CountAsync());

        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Open it" }).ClickAsync();
        await phone.Page.GetByText("Not taken yet").WaitForAsync();
        Assert.Equal("39", await phone.Page.GetByLabel("pH", new() { Exact = true }).InputValueAsync());
        await phone.Page.GetByLabel("pH", new() { Exact = true }).FillAsync("3.9");
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        await phone.Page.GetByText("Written down for jar 1").WaitForAsync();
        Assert.Single(await phone.ObservationsAsync());
    }

    [Fact]
    public async Task SignedOutMeanwhile_KeepsWhatWasTypedSaysSoAndSendsItAfterSigningIn()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        phone.Wire.Cut();
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "All well" }).ClickAsync();
        await phone.Page.GetByText(NotSent).WaitForAsync();
        await phone.Context.ClearCookiesAsync();
        phone.Wire.Mend();

        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        await phone.Page.GetByText(NotSent).WaitForAsync();
        Assert.EndsWith("/sign-in?to=%2F", phone.Page.Url, StringComparison.Ordinal);
        Assert.Empty(await phone.ObservationsAsync());
        phone.Wire.Cut();
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        Assert.Equal("Out of reach", await phone.Page.InnerTextAsync("h1"));
        Assert.Equal(0, await phone.Page.Locator("form.board").CountAsync());

        phone.Wire.Mend();
        await phone.SignInAsync(Walks.User);
        await phone.Page.GetByText("All that was kept on this phone is sent.").WaitForAsync();
        Assert.Single(await phone.ObservationsAsync());
    }

    [Fact]
    public async Task SignedOutByTheButton_NoPageOfTheHouseholdStaysOnThePhone()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        await phone.Page.GotoAsync(phone.Wire.Address + "/household");
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await phone.Page.GetByLabel("Password").WaitForAsync();
        phone.Wire.Cut();
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        Assert.Equal("Out of reach", await phone.Page.InnerTextAsync("h1"));
        Assert.Equal(["door", "files"],
            await phone.Page.EvaluateAsync<string[]>("async () => (await caches.keys()).filter(name => !['facts', 'unsent'].includes(name)).sort()"));
    }

    [Fact]
    public async Task SomebodyElseSignsIn_EntriesAreNeitherSentNorShown()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        await phone.Page.AddMemberAsync(phone.Kitchen, "Mira", child: false);
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        await phone.KeptAsync();
        phone.Wire.Cut();
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "All well" }).ClickAsync();
        await phone.Page.GetByText(NotSent).WaitForAsync();
        await phone.Context.ClearCookiesAsync();
        phone.Wire.Mend();
        await phone.SignInAsync("Mira");
        await phone.Page.GotoAsync(phone.Wire.Address + "/unsent");
        await phone.Page.GetByText("An entry of somebody else who was signed in on this phone").WaitForAsync();
        Assert.DoesNotContain("all well", await phone.Page.InnerTextAsync("#unsent"), StringComparison.Ordinal);
        Assert.Empty(await phone.ObservationsAsync());
    }

    [Fact]
    public async Task Page_ThatIsNotKept_SaysSoAndAFormThatIsNotKeptSaysThatItIsNot()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        await phone.Page.GotoAsync(phone.Wire.Address + "/household");
        phone.Wire.Cut();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await phone.Page.GetByText("This was not sent and is not kept").WaitForAsync();
        await phone.Page.GotoAsync(phone.Wire.Address + "/guides");
        await phone.Page.GetByText("this page is not kept on this phone").WaitForAsync();
    }

    [Fact]
    public async Task Pages_ShownFromThePhone_AreDrawnAndAxeFindsNothing()
    {
        await using Phone phone = await PhoneAsync(jars: 3);
        var findings = new List<string>();
        string folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "pictures-offline")).FullName;
        await phone.Page.GotoAsync(phone.Wire.Address + "/jars/1/ph");
        await phone.Page.GetByLabel("pH", new() { Exact = true }).FillAsync("39");
        await phone.Page.ChooseAsync("Meter");
        phone.Wire.Cut();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        await phone.Page.GetByText(NotSent).WaitForAsync();
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        await phone.Page.GetByText(NotSent).WaitForAsync();
        await PagePictureTests.DrawAsync(phone.Page, "today-kept", findings, folder);
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "All well" }).ClickAsync();
        await phone.Page.GetByText("2 entries on this phone are not sent yet.").WaitForAsync();
        await PagePictureTests.DrawAsync(phone.Page, "unsent", findings, folder);
        await phone.Page.GotoAsync(phone.Wire.Address + "/guides");
        await PagePictureTests.DrawAsync(phone.Page, "out-of-reach", findings, folder);
        phone.Wire.Mend();
        await phone.SendAsync();
        await phone.Page.GetByText("something in it was not right").WaitForAsync();
        await PagePictureTests.DrawAsync(phone.Page, "unsent-asked", findings, folder);
        Assert.True(findings.Count == 0, string.Join(Environment.NewLine, findings));
    }

    [Fact]
    public async Task WithoutScript_ThePageSaysThatNothingIsKept()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.GotoAsync(kitchen.Address + "/unsent");
        Assert.Contains("what you enter is sent at once or not at all", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Manifest_InABrowser_HasNoErrorAndThePageCanBeInstalled()
    {
        await using Phone phone = await PhoneAsync(jars: 1);
        ICDPSession session = await phone.Context.NewCDPSessionAsync(phone.Page);
        JsonElement manifest = (await session.SendAsync("Page.getAppManifest"))!.Value;
        Assert.Equal($"{phone.Wire.Address}/kitchen.webmanifest", manifest.GetProperty("url").GetString());
        Assert.Empty(manifest.GetProperty("errors").EnumerateArray());
        // A headless window is not one in which a browser offers it.
        Assert.Equal(["in-incognito"], (await session.SendAsync("Page.getInstallabilityErrors"))!.Value.GetProperty("installabilityErrors")
            .EnumerateArray().Select(error => error.GetProperty("errorId").GetString()));
    }
}
