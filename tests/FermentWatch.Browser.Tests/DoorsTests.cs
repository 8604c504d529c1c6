using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>The ways in, and what leads where, in a browser.</summary>
public sealed class DoorsTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task PutUp_SignInHasEndedMeanwhile_SaysWhyItAsksAndTheFormComesBackFilledIn()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.GotoAsync(kitchen.Address + "/put-up");
        await page.VegetableAsync("carrot");
        await page.GetByLabel("How much in each jar").FillAsync("850 g");
        await page.ChooseAsync("2.5 %");
        await page.GetByText("More, if you like").ClickAsync();
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("from the far bed");
        await context.ClearCookiesAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();

        Assert.Contains("You had been signed out, so nothing is written down yet. What you entered is kept", await page.InnerTextAsync("main"),
            StringComparison.Ordinal);
        await SignInAsync(page, Walks.User);
        Assert.Contains("What you typed stands below: look at it and send it again.", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.True(await page.GetByRole(AriaRole.Radio, new() { Name = "carrots" }).IsCheckedAsync());
        Assert.Equal("850 g", await page.GetByLabel("How much in each jar").InputValueAsync());
        Assert.True(await page.GetByRole(AriaRole.Radio, new() { Name = "2.5 %", Exact = true }).IsCheckedAsync());
        Assert.Equal("from the far bed", await page.GetByLabel("Name", new() { Exact = true }).InputValueAsync());
        Assert.Empty(await JarsAsync(kitchen));
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        await page.ArriveAsync($"{kitchen.Address}/jars/1?new=1");
        Assert.Equal("from the far bed", Assert.Single(await JarsAsync(kitchen)).Name);
    }

    [Fact]
    public async Task SetUp_ThatHasScript_OffersTheZoneOfTheBrowserAndTakesIt()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { TimezoneId = "America/Lima" });
        IPage page = await context.NewPageAsync();
        var wrong = new List<string>();
        page.Console += (_, said) => wrong.Add(said.Text);
        await page.GotoAsync(await kitchen.SetUpAddressAsync());
        Assert.Equal("America/Lima", await page.GetByLabel("Time zone").InputValueAsync());
        Assert.Contains("As this browser has it", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByLabel("Your name").FillAsync(Walks.User);
        await page.GetByLabel("Password").FillAsync("short");
        await page.GetByLabel("The same again").FillAsync("short");
        await page.GetByLabel("Time zone").SelectOptionAsync("Europe/Vienna");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set up" }).ClickAsync();
        Assert.Contains("Not taken yet", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal("Europe/Vienna", await page.GetByLabel("Time zone").InputValueAsync());
        Assert.DoesNotContain(wrong, text => text.Contains("Content Security Policy", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Brine_OfAJarMeasuredBelowTheLine_StartsAnotherByAFormThatRecordsIt()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 12);
        ILocator start = page.GetByRole(AriaRole.Link, new() { Name = "Start another jar with its brine" });
        await page.GotoAsync(kitchen.Address + "/jars/1");
        Assert.Equal(0, await start.CountAsync());
        await page.MeasureAsync(kitchen, 1, "3.6", "Meter", check: true);
        await page.GetByText("What went in", new() { Exact = true }).ClickAsync();
        await start.ClickAsync();
        await page.VegetableAsync("carrot");
        await page.GetByLabel("How much in each jar").FillAsync("800 g");
        await page.ChooseAsync("2.5 %");
        Assert.Equal("1", await page.GetByLabel("With brine of an earlier jar").InputValueAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        Assert.Contains("Enter starter brine, such as 800 g", await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        await page.GetByLabel("How much of its brine").FillAsync("60 g");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        await page.ArriveAsync($"{kitchen.Address}/jars/2?new=1");

        Assert.Contains("60 g from jar 1", await page.WholeTextAsync(), StringComparison.Ordinal);
        Starter starter = (await JarsAsync(kitchen)).Single(jar => jar.Number == 2).Starter!;
        Assert.Equal((1, 0.06), (starter.FromJar, starter.MassKilograms));
        Assert.InRange(starter.AcidityPercentLactic, 0.3, 2.5);
        await page.GotoAsync(kitchen.Address + "/jars/1/seen");
        await page.GetByRole(AriaRole.Button, new() { Name = "Slime" }).ClickAsync();
        await page.GotoAsync(kitchen.Address + "/jars/1");
        Assert.Equal(0, await start.CountAsync());
    }

    [Fact]
    public async Task Guide_ThatAdvisesAWeightOrAVentedLid_LeadsToTheFormThatRecordsIt()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 4);
        await page.GotoAsync(kitchen.Address + "/jars/1/correct?to=Tight");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put right" }).ClickAsync();
        foreach ((string seen, string link, string written) in new[]
            { ("Pressure, or brine pushed out", "Jar 1 has a vented lid now: write it down", "Lid: vented lid, since today"),
              ("A flat white film", "Jar 1 has a weight now: write it down", "Cover: under a weight, since today") })
        {
            await page.GotoAsync(kitchen.Address + "/jars/1/seen");
            await page.GetByRole(AriaRole.Button, new() { Name = seen }).ClickAsync();
            await page.GetByRole(AriaRole.Link, new() { Name = link }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Put right" }).ClickAsync();
            await page.ArriveAnsweredAsync(kitchen, 1);
            Assert.Contains(written, await page.WholeTextAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Round_TwoJarsTicked_BothGetTheirGuideAndAPhEntryLeadsOnToTheNextJar()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", howMany: 5, daysAgo: 7);
        await page.MeasureAsync(kitchen, 1, "3.6", "Meter", check: true);
        await page.GotoAsync(kitchen.Address + "/");
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "Jar 2" }).CheckAsync();
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "Jar 4" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "All well but the ticked at kitchen counter" }).ClickAsync();
        Assert.Equal("Seen at jar 2", await page.TitleAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "A flat white film" }).ClickAsync();
        Assert.Equal("Seen at jar 4", await page.TitleAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Brine low" }).ClickAsync();
        Assert.Equal(["Jar 2: flat white film", "Jar 4: brine low"], await page.Locator(".now-box h2[id^=guide]").AllInnerTextsAsync());

        await page.GetByRole(AriaRole.Link, new() { Name = "Measure jar 3" }).ClickAsync();
        await page.GetByLabel("pH", new() { Exact = true }).FillAsync("3,7");
        await page.ChooseAsync("Meter");
        await page.GetByLabel("Meter or probe checked in buffer that day").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        Assert.StartsWith($"{kitchen.Address}/?jar=3&said=", page.Url, StringComparison.Ordinal);
        string done = await page.InnerTextAsync(".done");
        Assert.Contains("Written down for jar 3: pH 3.7 by meter", done, StringComparison.Ordinal);
        Assert.Matches("Next: jar (2|4|5)", done);
    }

    [Fact]
    public async Task Seen_BackAndAnotherAnswer_IsAskedAboutAndThenTakesItsPlace()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 8);
        await page.GotoAsync(kitchen.Address + "/jars/1/seen");
        string id = await page.Locator("input[name='Input.Id']").First.InputValueAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Slime" }).ClickAsync();
        await page.GotoAsync(kitchen.Address + "/jars/1/seen");
        await page.EvaluateAsync("id => document.querySelectorAll(\"input[name='Input.Id']\").forEach(each => each.value = id)", id);
        await page.GetByRole(AriaRole.Button, new() { Name = "A flat white film" }).ClickAsync();

        Assert.Contains("You sent this form before with \"seen: slime\". Was that wrong, or are both right?",
            await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        Assert.Contains("This time it says \"seen: a flat white film\".", await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        Assert.Equal(SightingKind.Slime, Assert.Single(await SeenAsync(kitchen)).Kind);
        await page.GetByRole(AriaRole.Button, new() { Name = "It was wrong: this takes its place" }).ClickAsync();
        Assert.Contains("Jar 1: flat white film", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal(SightingKind.Film, Assert.Single(await SeenAsync(kitchen)).Kind);
    }

    [Fact]
    public async Task Onward_BackAndAnotherEnd_IsAskedAboutAndASecondTapOnReopenShowsTheJarAsItStands()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 8);
        await page.GotoAsync(kitchen.Address + "/jars/1/on");
        IPage left = await context.NewPageAsync();
        await left.GotoAsync(kitchen.Address + "/jars/1/on");
        string id = await page.Locator("input[name='Input.Id']").First.InputValueAsync();
        await left.EvaluateAsync("id => document.querySelectorAll(\"input[name='Input.Id']\").forEach(each => each.value = id)", id);
        await page.GetByLabel("Why it is thrown out").FillAsync("taken for jar 2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Thrown out" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);

        await left.GetByRole(AriaRole.Button, new() { Name = "Eaten up" }).ClickAsync();
        Assert.Contains("You sent this form before with \"thrown out: taken for jar 2\".", await left.InnerTextAsync(".wrong-box"),
            StringComparison.Ordinal);
        await left.GetByRole(AriaRole.Button, new() { Name = "It was wrong: this takes its place" }).ClickAsync();
        await left.ArriveAnsweredAsync(kitchen, 1);
        Assert.StartsWith("Eaten up on ", await left.InnerTextAsync(".now-words"), StringComparison.Ordinal);

        await page.GotoAsync(kitchen.Address + "/jars/1");
        await left.GetByRole(AriaRole.Button, new() { Name = "Reopen jar 1" }).ClickAsync();
        await left.GetByRole(AriaRole.Link, new() { Name = "Enter a pH" }).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Reopen jar 1" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Enter a pH" }).WaitForAsync();
        Assert.Equal(kitchen.Address + "/jars/1", page.Url);
    }

    [Fact]
    public async Task Child_SeesWhatAChildMayDo_AndAtMouldAndSlimeIsToldToCallAnAdult()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext owner = await NoScriptAsync();
        IPage page = await owner.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 22);
        await page.AddMemberAsync(kitchen, "Lena", child: true);

        await using IBrowserContext child = await NoScriptAsync();
        IPage other = await child.NewPageAsync();
        await other.GotoAsync(kitchen.Address + "/sign-in");
        await SignInAsync(other, "Lena");
        foreach ((string path, string[] absent) in new (string, string[])[]
            { ("/jars/1", ["Enter a pH", "Taste", "Cold, finished, thrown out", "Put right, or change lid, cover, how sour", "Move jar 1"]),
                ("/", ["Taste jar 1", "Not tasting this week"]) })
        {
            await other.GotoAsync(kitchen.Address + path);
            foreach (string name in absent)
            {
                int shown = await other.GetByRole(AriaRole.Link, new() { Name = name, Exact = true }).CountAsync()
                    + await other.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).CountAsync();
                Assert.True(shown == 0, $"{name} is shown to a child at {path}");
            }
        }

        foreach ((string seen, string normal) in new[] { ("Slime", "Throw the jar out: slimy is spoiled."),
            ("Fuzz or colour, or cannot tell", "Wash the vessel and the weight in hot soapy water.") })
        {
            await other.GotoAsync(kitchen.Address + "/jars/1/seen");
            await other.GetByRole(AriaRole.Button, new() { Name = seen }).ClickAsync();
            string words = await other.InnerTextAsync(".now-box:has(#guide-1-head)");
            Assert.Contains("Call an adult. Do not open the jar.", words, StringComparison.Ordinal);
            Assert.DoesNotContain(normal, words, StringComparison.Ordinal);
        }
    }

    private Task<IBrowserContext> NoScriptAsync() =>
        chromium.NewContextAsync(new() { JavaScriptEnabled = false, ViewportSize = new() { Width = 390, Height = 844 } });

    private static async Task SignInAsync(IPage page, string name)
    {
        await page.GetByLabel("Name").FillAsync(name);
        await page.GetByLabel("Password").FillAsync(Walks.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.Locator("nav.rooms").WaitForAsync();
    }

    private static Task<IReadOnlyList<Jar>> JarsAsync(RunningKitchen kitchen) =>
        kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None);

    private static async Task<IReadOnlyList<Sighting>> SeenAsync(RunningKitchen kitchen) =>
        [.. (await JarsAsync(kitchen)).SelectMany(jar => jar.Standing).OfType<Sighting>()];
}
