using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>Everything can be put right: with the forecast before and after, in a browser that runs no script.</summary>
public sealed partial class PutRightTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Correct_SaltAndLid_ForecastFollowsAndWhatStoodBeforeIsKept()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await ThreeDaysAsync(kitchen);
        (_, double before) = await PhOnDay5Async(page, kitchen);

        await page.GetByText("What went in", new() { Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Put right, or change lid" }).ClickAsync();
        Assert.Equal("2.25 %", await page.GetByLabel("Salt", new() { Exact = true }).InputValueAsync());
        await page.GetByLabel("Salt", new() { Exact = true }).FillAsync("5,5");
        await page.GetByLabel("Closed with").SelectOptionAsync("Tight");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put right" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);

        string words = await page.WholeTextAsync();
        Assert.Contains("Put right. ", words, StringComparison.Ordinal);
        Assert.Contains("Salt: 5.5 %, weighed", words, StringComparison.Ordinal);
        Assert.Contains("Before: 2.25 %, weighed.", words, StringComparison.Ordinal);
        Assert.Contains("Lid: tight lid, since today", words, StringComparison.Ordinal);
        (_, double after) = await PhOnDay5Async(page, kitchen);
        Assert.True(after > before + 0.1, $"late end of the pH on day 5 from {before} to {after}: more salt sours later");
    }

    [Fact]
    public async Task Reopen_ThrownOutByMistake_StandsAmongPastJarsThenHasItsForecastAgain()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await ThreeDaysAsync(kitchen);
        var before = await PhOnDay5Async(page, kitchen);
        await page.GotoAsync(kitchen.Address + "/jars/1/on");
        await page.GetByLabel("Why it is thrown out").FillAsync("taken for jar 2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Thrown out" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);

        string past = await page.InnerTextAsync("main");
        Assert.Contains("day 3: taken for jar 2.", past, StringComparison.Ordinal);
        Assert.DoesNotContain("sour enough", past, StringComparison.Ordinal);
        await page.GotoAsync(kitchen.Address + "/jars");
        await page.GetByRole(AriaRole.Link, new() { Name = "Past jars" }).ClickAsync();
        Assert.Contains("Its pH was not measured.", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new() { Name = "cabbage" }).ClickAsync();
        Assert.Contains("How it ended", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Reopen jar 1" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Enter a pH" }).WaitForAsync();

        Assert.Equal(before, await PhOnDay5Async(page, kitchen));
    }

    [Fact]
    public async Task TakeBack_IntoTheCold_StandsWhereItStoodWithTheForecastItHad()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await ThreeDaysAsync(kitchen);
        var before = await PhOnDay5Async(page, kitchen);
        await page.GotoAsync(kitchen.Address + "/jars/1/on");
        await page.GetByRole(AriaRole.Button, new() { Name = "Into the cold" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);
        Assert.Contains("Day 3, refrigerator, in the cold", await page.InnerTextAsync("main"), StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Button, new() { Name = "Take back in the cold" }).ClickAsync();
        await page.ArriveAsync($"{kitchen.Address}/jars/1");

        Assert.Contains("Day 3, kitchen counter, fermenting", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal(before, await PhOnDay5Async(page, kitchen));
    }

    [Fact]
    public async Task PutUp_BackChangedAndSentAgain_IsAskedAboutAndCorrectsOrPutsUpAnother()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await SendTwiceAsync(page, kitchen, "600 g", "900 g");
        Assert.Contains("You sent this form before with 600 g of cabbage: that is jar 1.", await page.InnerTextAsync("main"),
            StringComparison.Ordinal);
        Assert.Equal("900 g", await page.GetByLabel("How much in each jar").InputValueAsync());

        await page.GetByRole(AriaRole.Button, new() { Name = "A correction of jar 1" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);
        Assert.Contains("cabbage 900 g", await page.WholeTextAsync(), StringComparison.Ordinal);

        await SendTwiceAsync(page, kitchen, "700 g", "800 g");
        await page.GetByRole(AriaRole.Button, new() { Name = "It is another jar" }).ClickAsync();
        await page.ArriveAsync($"{kitchen.Address}/jars/3?new=1");
        Assert.Contains("cabbage 800 g", await page.WholeTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PutUp_TwoHundredKilogramsAndWholeCucumbersWithoutWater_AreAskedAboutInOneQuestion()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.GotoAsync(kitchen.Address + "/put-up");
        await page.VegetableAsync("cucumber");
        await page.GetByLabel("How much in each jar").FillAsync("200 kg");
        await page.ChooseAsync("3 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        Assert.Contains("200 g?", await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        await page.GetByLabel("How much in each jar").FillAsync("500 g");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        Assert.Contains("Whole cucumber gives no brine of its own", await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        await page.GetByLabel("It is right as it stands").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        await page.ArriveAsync($"{kitchen.Address}/jars/1?new=1");
    }

    [Fact]
    public async Task Strip_BrineNotSaid_IsAskedForAndTheAnswerTellsWhatItChanged()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await ThreeDaysAsync(kitchen);
        await page.GotoAsync(kitchen.Address + "/jars/1/ph");
        await page.GetByLabel("pH", new() { Exact = true }).FillAsync("3,9");
        await page.ChooseAsync("Strip");
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        Assert.Contains("Pale or dark brine?", await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        await page.ChooseAsync("Pale brine");
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);
        Assert.Contains("Written down for jar 1: pH 3.9 by strip, pale brine. Below the line. One more reading on another day settles it.",
            await page.InnerTextAsync(".done"), StringComparison.Ordinal);
        kitchen.Clock.Advance(TimeSpan.FromDays(1));
        await page.MeasureAsync(kitchen, 1, "3.8", "Strip", check: true);
        Assert.Contains("That is the second below the line, on another day: settled.", await page.InnerTextAsync(".done"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Round_FilmSeen_IsSettledByItsButtonThereAndTwoWellDays()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await ThreeDaysAsync(kitchen);
        (double low, double high) = await PhOnDay5Async(page, kitchen);
        await page.GotoAsync(kitchen.Address + "/jars/1/seen");
        await page.GetByRole(AriaRole.Button, new() { Name = "A flat white film" }).ClickAsync();
        await page.UntilAtAsync(address => !address.EndsWith("/seen", StringComparison.Ordinal));
        await page.GotoAsync(kitchen.Address + "/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Skimmed: jar 1" }).ClickAsync();
        await page.UntilAtAsync(address => address.Contains("/?said=", StringComparison.Ordinal));
        Assert.Contains("Written down for jar 1: skimmed.", await page.InnerTextAsync(".done"), StringComparison.Ordinal);
        Assert.Equal(0, await page.GetByRole(AriaRole.Button, new() { Name = "Skimmed: jar 1" }).CountAsync());
        for (int day = 0; day < 2; day++)
        {
            kitchen.Clock.Advance(TimeSpan.FromDays(1));
            await page.GotoAsync(kitchen.Address + "/");
            await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^All well") }).ClickAsync();
            await page.GetByText("Written down: all well").WaitForAsync();
        }
        (double lowAfter, double highAfter) = await PhOnDay5Async(page, kitchen);
        Assert.True(highAfter - lowAfter > high - low, $"from {high - low:0.00} to {highAfter - lowAfter:0.00} pH wide");
    }

    /// <summary>The same form sent, gone back to, changed and sent again; a browser that keeps pages brings back the form's id.</summary>
    private static async Task SendTwiceAsync(IPage page, RunningKitchen kitchen, string first, string then)
    {
        await page.GotoAsync(kitchen.Address + "/put-up");
        string id = await page.Locator("input[name='Input.Id']").InputValueAsync();
        await SendAsync(page, first);
        await page.UntilAtAsync(new Regex(@"/jars/\d+\?new=1$").IsMatch);
        await page.GotoAsync(kitchen.Address + "/put-up");
        await page.EvaluateAsync("id => document.querySelector(\"input[name='Input.Id']\").value = id", id);
        await SendAsync(page, then);
        await page.WaitForSelectorAsync(".wrong-box");
    }

    private static async Task SendAsync(IPage page, string howMuch)
    {
        await page.GetByLabel("How much in each jar").FillAsync(howMuch);
        await page.ChooseAsync("2.25 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
    }

    /// <summary>A jar of cabbage, packed three days ago, on its page.</summary>
    private async Task<IPage> ThreeDaysAsync(RunningKitchen kitchen)
    {
        IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 3);
        return page;
    }

    private Task<IBrowserContext> NoScriptAsync() =>
        chromium.NewContextAsync(new() { JavaScriptEnabled = false, ViewportSize = new() { Width = 390, Height = 844 } });

    /// <summary>The expected spread of the pH on day 5, from the table of figures.</summary>
    private static async Task<(double Low, double High)> PhOnDay5Async(IPage page, RunningKitchen kitchen)
    {
        await page.GotoAsync(kitchen.Address + "/jars/1");
        await page.GetByText("The same as figures").ClickAsync();
        string row = (await page.Locator("tbody tr").AllInnerTextsAsync()).Single(text => text.Split('\t')[1] == "5");
        Match spread = Spread().Match(row);
        return (double.Parse(spread.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture),
            double.Parse(spread.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"\((\d\.\d+) to (\d\.\d+)\)")]
    private static partial Regex Spread();
}
