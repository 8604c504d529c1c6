using System.Text.RegularExpressions;
using FermentWatch.Kitchen.Guides;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>Day one with nothing bought, in a browser that runs no script.</summary>
public sealed partial class DayOneTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task PutUp_NoSensorNoMeterSaltByTasteNoScript_TakesSevenInputsAndGivesAForecastAndAWeekOfWords()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.GetByRole(AriaRole.Link, new() { Name = "Put up a jar" }).ClickAsync();

        Assert.Equal(["Input.HowMuch"], await UnansweredAsync(page));
        await page.GetByLabel("How much in each jar").FillAsync("1 head");
        await page.ChooseAsync("By taste");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up" }).ClickAsync();
        await page.ArriveAsync($"{kitchen.Address}/jars/1?new=1");

        await page.GetByText("Its first week, day by day").ClickAsync();
        string words = await page.InnerTextAsync("main");
        Assert.Matches(@"(Probably sour enough|Probably not sour enough|Not expected to be sour enough).*; not measured\.", words);
        Assert.Matches(@"Expected below 4\.6.*; not measured\.", words);
        Assert.Equal([1, 2, 3, 4, 5, 6, 7], Days().Matches(words).Select(match => int.Parse(match.Groups[1].Value, null)));
        Assert.Matches("First taste|Worth tasting", words);
        await AssertCautionsAsync(page, Cautions.Deciding);
        (double low, double high) = await PhSpreadAsync(page, day: 3);
        Assert.True(high - low > 0.15, $"pH on day 3 from {low} to {high} is no wide spread.");
    }

    [Fact]
    public async Task PutUp_ImpossibleValues_KeepsWhatWasTypedAndSaysBesideEachFieldWhatWouldBeRight()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.GotoAsync(kitchen.Address + "/put-up");
        await page.GetByLabel("How much in each jar").FillAsync("-3 kg");
        await page.GetByText("More, if you like").ClickAsync();
        await page.GetByLabel("Another per cent of salt").FillAsync("225 %");
        await page.GetByLabel("Also in it").FillAsync("pork 200g");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up" }).ClickAsync();
        await page.WaitForSelectorAsync(".wrong-box");

        Assert.Equal("-3 kg", await page.GetByLabel("How much in each jar").InputValueAsync());
        Assert.Equal("225 %", await page.GetByLabel("Another per cent of salt").InputValueAsync());
        Assert.Equal("pork 200g", await page.GetByLabel("Also in it").InputValueAsync());
        Assert.Contains("-3 kg cannot be used. Enter a mass from 10 g to 250 kg", await page.InnerTextAsync("#f-how-much-wrong"),
            StringComparison.Ordinal);
        Assert.Contains("225 % cannot be used. Enter 1.5 to 8 %", await page.InnerTextAsync("#f-salt-wrong"), StringComparison.Ordinal);
        Assert.Contains("Leave it out", await page.InnerTextAsync("#f-also-in-it-wrong"), StringComparison.Ordinal);
        await AssertCautionsAsync(page, Cautions.PuttingUp);
    }

    [Fact]
    public async Task Measure_MeterThenTakenBackAndCorrected_ShowsTheLineWhyAReadingDoesNotCountAndTheCautions()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 9);
        await page.GotoAsync(kitchen.Address + "/jars/1/ph");
        await AssertCautionsAsync(page, Cautions.Deciding);

        await page.MeasureAsync(kitchen, 1, "3.9", "Meter");
        Assert.Contains("does not count for the acid line: the meter was not checked", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Contains("Acid line: not measured", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new() { Name = "Correct" }).ClickAsync();
        Assert.Equal("3.9", await page.GetByLabel("pH", new() { Exact = true }).InputValueAsync());
        await page.GetByLabel("Meter or probe checked in buffer that day").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Correct" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);
        Assert.Contains("Measured 3.9 by meter", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Contains("Below 4.6 the botulism germ does not grow. This does not show", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back" }).ClickAsync();
        await page.ArriveAsync($"{kitchen.Address}/jars/1");
        Assert.Contains("Acid line: not measured", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    /// <summary>Two stand in the open, every one is a tap away, each with who says so.</summary>
    private static async Task AssertCautionsAsync(IPage page, IReadOnlyList<Caution> cautions)
    {
        Assert.Equal(2, await page.Locator(".cautions > ul > li:visible").CountAsync());
        string whole = await page.WholeTextAsync(".cautions details");
        foreach (Caution caution in cautions)
            Assert.Contains($"{caution.Text} {caution.Source}", whole, StringComparison.Ordinal);
        await page.Locator(".cautions summary").ClickAsync();
        Assert.Equal(cautions.Count, await page.Locator(".cautions details li:visible").CountAsync());
    }

    [Fact]
    public async Task Move_ToTheCellar_MakesItLater()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter");
        (_, double before) = await PhSpreadAsync(page, day: 5);
        kitchen.Clock.Advance(TimeSpan.FromMinutes(20));
        await page.GetByText("It stands somewhere else now").ClickAsync();
        await page.GetByLabel("To", new() { Exact = true }).SelectOptionAsync("cellar");
        await page.GetByRole(AriaRole.Button, new() { Name = "Move jar 1" }).ClickAsync();
        await page.ArriveAsync($"{kitchen.Address}/jars/1");

        // Twenty minutes may lead over midnight.
        Assert.Matches("Day [01], cellar", await page.InnerTextAsync("main"));
        // The forecast knows of a move from the quarter hour that closes after it.
        kitchen.Clock.Advance(TimeSpan.FromMinutes(20));
        await kitchen.SettleAsync();
        await page.ReloadAsync();
        (_, double after) = await PhSpreadAsync(page, day: 5);
        Assert.True(after > before + 0.2, $"late end of the pH on day 5 from {before} to {after}");
    }

    [Fact]
    public async Task SignOutAndIn_WrongThenRightPassword_TellsNothingAndLeadsBack()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await NoScriptAsync();
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen, pounds: true);
        await page.GotoAsync(kitchen.Address + "/household");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.GotoAsync(kitchen.Address + "/sensors");
        await page.GetByLabel("Name").FillAsync(Walks.User);
        await page.GetByLabel("Password").FillAsync("three wet cabbages");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        Assert.Contains("do not belong together", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByLabel("Password").FillAsync(Walks.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.ArriveAsync(kitchen.Address + "/sensors");
        await page.GotoAsync(kitchen.Address + "/put-up");
        Assert.Contains("1 quart", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    private Task<IBrowserContext> NoScriptAsync() =>
        chromium.NewContextAsync(new() { JavaScriptEnabled = false, ViewportSize = new() { Width = 390, Height = 844 } });

    [Fact]
    public async Task PutUp_AsTheAmountIsTyped_SaysHowMuchSaltToWeigh()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        IPage page = await context.NewPageAsync();
        var wrong = new List<string>();
        page.Console += (_, said) => wrong.Add(said.Text);
        await page.SetUpAsync(kitchen);
        await page.GotoAsync(kitchen.Address + "/put-up");
        ILocator slab = page.Locator(".salt-slab");
        Assert.Contains("22.5 g salt to a kilogram", await slab.InnerTextAsync(), StringComparison.Ordinal);

        await page.GetByLabel("How much in each jar").FillAsync("1,2 kg");
        await slab.GetByText("27 g salt").WaitForAsync();
        await slab.GetByText("about 1 1/2 tablespoons: by the spoon 21 to 32 g").WaitForAsync();
        await page.ChooseAsync("3 %");
        await slab.GetByText("36 g salt").WaitForAsync();
        await page.ChooseAsync("By taste");
        await slab.GetByText("Salted by taste").WaitForAsync();
        await page.ChooseAsync("2.5 %");
        await page.GetByLabel("How much in each jar").FillAsync("a good deal");
        await slab.GetByText("How much salt?").WaitForAsync();

        await page.VegetableAsync("something else");
        Assert.True(await page.GetByLabel("Something else: its name").IsVisibleAsync());
        await page.VegetableAsync("daikon");
        Assert.False(await page.GetByLabel("Something else: its name").IsVisibleAsync());
        Assert.Equal("", await page.GetByLabel("Another vegetable").InputValueAsync());
        Assert.DoesNotContain(wrong, text => !text.Contains("422", StringComparison.Ordinal));
    }

    /// <summary>What must be filled or chosen before a jar is put up; the list of other vegetables stands beside those drawn.</summary>
    private static async Task<string[]> UnansweredAsync(IPage page)
    {
        var visible = new List<string>();
        var answered = new HashSet<string> { "Input.Another" };
        foreach (ILocator control in await page.Locator("form input:not([type=hidden]), form select, form textarea").AllAsync())
        {
            if (!await control.IsVisibleAsync())
                continue;
            string name = await control.GetAttributeAsync("name") ?? "";
            visible.Add(name);
            bool isSelect = await control.EvaluateAsync<bool>("each => each.tagName === 'SELECT'");
            if (isSelect || (await control.GetAttributeAsync("type") == "radio" ? await control.IsCheckedAsync()
                : await control.InputValueAsync() != ""))
                answered.Add(name);
        }
        return [.. visible.Distinct().Except(answered)];
    }

    /// <summary>The spread of the pH on a day, from the table of figures.</summary>
    private static async Task<(double Low, double High)> PhSpreadAsync(IPage page, int day)
    {
        await page.GetByText("The same as figures").ClickAsync();
        string row = (await page.Locator("tbody tr").AllInnerTextsAsync()).Single(text => text.Split('\t')[1] == $"{day}");
        Match spread = Spread().Match(row);
        return (double.Parse(spread.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture),
            double.Parse(spread.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"^Day ([1-7]), ", RegexOptions.Multiline)]
    private static partial Regex Days();

    [GeneratedRegex(@"\((\d\.\d+) to (\d\.\d+)\)")]
    private static partial Regex Spread();
}
