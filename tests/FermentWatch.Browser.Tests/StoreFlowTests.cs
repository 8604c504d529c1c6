using System.IO.Compression;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>
/// From the plan of a winter to the last jar that is given away, each from a signed-out phone to done, counted in taps and keys like
/// <see cref="FlowTests"/>, with script and without it. Pictures of where each ends are beside the tests.
/// </summary>
public sealed class StoreFlowTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Plan_TwoServingsEachForFourThisWinter_TakesFiveTapsAndTwoKeys(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await Hand.SignInAsync(chromium, kitchen, script);
        await hand.TapAsync(Hand.Bar(hand.Page, "Jars"));
        await hand.TapLinkAsync("Plan a winter");
        await hand.TypeAsync(hand.Page.GetByLabel("Servings a week, each"), "2");
        await hand.TypeAsync(hand.Page.GetByLabel("How many eat"), "4");
        await hand.TapButtonAsync("Plan it");
        await hand.Page.GetByRole(AriaRole.Heading, new() { Name = "Starts" }).WaitForAsync();
        await hand.PictureAsync($"plan-{Look(script)}");

        AssertTook(hand, taps: 5, keys: 2);
        string plan = await hand.Page.WholeTextAsync();
        Assert.Contains("8 servings a week from 25 November until 15 April 2027", plan, StringComparison.Ordinal);
        Assert.InRange(await hand.Page.Locator(".card").CountAsync(), 1, 30);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Recipe_KeptFromAJarAndThreeJarsPutUpByIt_TakesTenTapsAndTenKeys(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await Hand.SignInAsync(chromium, kitchen, script,
            page => page.PutUpAsync(kitchen, "cabbage", "800 g", "2.5 %", "cellar", daysAgo: 30));
        await hand.ToJarAsync(1);
        await hand.TapAsync(hand.Page.GetByText("What went in", new() { Exact = true }));
        await hand.TapLinkAsync("Keep as a recipe");
        await hand.TypeAsync(hand.Page.GetByLabel("Name", new() { Exact = true }), "our kraut");
        await hand.TapButtonAsync("Keep");
        await hand.TypeAsync(hand.Page.GetByLabel("Jars", new() { Exact = true }), "3");
        await hand.TapButtonAsync("Work it out");
        await hand.Page.GetByText("For 3 jars of 1 l", new() { Exact = false }).WaitForAsync();
        await hand.PictureAsync($"recipe-{Look(script)}");
        await hand.TapLinkAsync("Put up by this recipe");
        await hand.TapButtonAsync("Put up");
        await hand.Page.UntilAtAsync(address => address.EndsWith("/jars?put-up=2,3,4", StringComparison.Ordinal));
        await hand.PictureAsync($"recipe-put-up-{Look(script)}");

        AssertTook(hand, taps: 10, keys: 10);
        Assert.Equal([("our kraut", 0.85, 2.5), ("our kraut", 0.85, 2.5), ("our kraut", 0.85, 2.5)], (await JarsAsync(kitchen))
            .Where(jar => jar.Number > 1).Select(jar => (jar.Name, jar.Portions[0].MassKilograms, jar.Salting.Percent!.Value)));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Brine_OfFivePercentAskedForWherePuttingUp_TakesFiveTapsAndOneKey(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await Hand.SignInAsync(chromium, kitchen, script);
        await hand.TapAsync(Hand.Bar(hand.Page, "Put up"));
        await hand.TapAsync(hand.Page.GetByText("More, if you like", new() { Exact = true }));
        await hand.TapLinkAsync("Brine by the hydrometer or salometer");
        await hand.TypeAsync(hand.Page.GetByLabel("Or: salt that is wanted", new() { Exact = false }), "5");
        await hand.TapButtonAsync("Work it out");
        await hand.Page.GetByText("5 % of salt by mass", new() { Exact = false }).WaitForAsync();
        await hand.PictureAsync($"brine-{Look(script)}");

        AssertTook(hand, taps: 5, keys: 1);
        // 5 g in 100 g of brine are 5 g to 95 g of water, and a litre of water has 998.2 g at 20 C.
        Assert.Contains("52.5 g of salt", await hand.Page.WholeTextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Portion_AQuarterOutOfAJarInTheCold_TakesFourTaps(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await Hand.SignInAsync(chromium, kitchen, script, page => JarInTheColdAsync(page, kitchen));
        await hand.TapAsync(Hand.Bar(hand.Page, "Jars"));
        await hand.TapLinkAsync("Cold store");
        await hand.TapLinkAsync("Took some of jar 1");
        await hand.TapButtonAsync("A quarter");
        await hand.Page.UntilAtAsync(address => address.Contains("/cold?jar=1&said=", StringComparison.Ordinal));
        await hand.Page.Locator(".done").WaitForAsync();
        await hand.PictureAsync($"portion-{Look(script)}");

        AssertTook(hand, taps: 4, keys: 0);
        Assert.Equal(0.25, (await JarsAsync(kitchen))[0].Standing.OfType<PortionTaken>().Single().Fraction);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task GiveAway_AJarWithItsTag_TakesSixTapsAndTheLettersOfAName(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await Hand.SignInAsync(chromium, kitchen, script, page => JarInTheColdAsync(page, kitchen));
        await hand.ToJarAsync(1);
        await hand.TapLinkAsync("Eaten up, given away, thrown out");
        await hand.TypeAsync(hand.Page.GetByLabel("Given away: to whom"), "Mo");
        await hand.TapButtonAsync("Given away");
        await hand.Page.ArriveAnsweredAsync(kitchen, 1);
        await hand.PictureAsync($"given-{Look(script)}");
        await hand.TapLinkAsync("A tag to go with it");
        await hand.Page.ArriveAsync($"{kitchen.Address}/jars/1/tag");
        await hand.PictureAsync($"tag-{Look(script)}");

        AssertTook(hand, taps: 6, keys: 2);
        Assert.Contains("Cabbage, for Mo", await hand.Page.WholeTextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Export_TheHousehold_TakesTwoTapsAndIsOneZip(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await Hand.SignInAsync(chromium, kitchen, script,
            page => page.PutUpAsync(kitchen, "cabbage", "800 g", "2.5 %", "cellar"));
        await hand.TapAsync(Hand.Bar(hand.Page, "House"));
        IDownload file = await hand.Page.RunAndWaitForDownloadAsync(() => hand.TapButtonAsync("Download everything"));
        await hand.PictureAsync($"export-{Look(script)}");

        AssertTook(hand, taps: 2, keys: 0);
        using ZipArchive zip = ZipFile.OpenRead(await file.PathAsync());
        Assert.NotNull(zip.GetEntry("README.txt"));
        using var rows = new StreamReader(zip.GetEntry("records/jar.csv")!.Open());
        Assert.Equal(2, (await rows.ReadToEndAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    private static async Task JarInTheColdAsync(IPage page, RunningKitchen kitchen)
    {
        await page.PutUpAsync(kitchen, "cabbage", "800 g", "2.5 %", "cellar", daysAgo: 30);
        await page.GotoAsync(kitchen.Address + "/jars/1/on");
        await page.GetByRole(AriaRole.Button, new() { Name = "Into the cold" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);
        kitchen.Clock.Advance(TimeSpan.FromDays(1));
    }

    private static void AssertTook(Hand hand, int taps, int keys) => Assert.Equal((Hand.SignInTaps + taps, keys), (hand.Taps, hand.Keys));

    private static string Look(bool script) => script ? "script" : "plain";

    private static async Task<IReadOnlyList<Jar>> JarsAsync(RunningKitchen kitchen) =>
        await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None);
}
