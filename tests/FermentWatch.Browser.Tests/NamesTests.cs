using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>Names as people give them: long, from right to left, with pictures, or of somebody who tries.</summary>
public sealed class NamesTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const string RightToLeft = "כרוב כבוש של סבתא", Emoji = "Krautfest 🥬👩‍🍳🫙",
        Script = "<img src=x onerror=\"document.title='taken'\">";

    private static readonly string Unbroken = string.Concat(Enumerable.Repeat("Sauerkraut", 6));

    private static readonly string[] All = [RightToLeft, Emoji, Script, Unbroken];

    [Fact]
    public async Task JarNames_OfEveryKind_StandAsGivenRunNothingAndFitAPhone()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        foreach (string name in All)
            await PutUpAsync(page, kitchen, name);
        await kitchen.SettleAsync();
        string folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "pictures-names")).FullName;
        var findings = new List<string>();
        foreach (string path in (string[])["/", "/jars", "/jars/1", "/jars/2", "/jars/3", "/jars/4", "/jars/4/record", "/jars/1/taste", "/jars/4/ph",
            "/jars/1/correct", "/labels?jars=1-4", "/guides"])
        {
            await page.GotoAsync(kitchen.Address + path);
            Assert.DoesNotContain("taken", await page.TitleAsync(), StringComparison.Ordinal);
            await PagePictureTests.DrawAsync(page, path.Trim('/').Replace('/', '-') is { Length: > 0 } file ? file.Split('?')[0] : "today",
                findings, folder);
        }
        Assert.True(findings.Count == 0, string.Join(Environment.NewLine, findings));
        await page.GotoAsync(kitchen.Address + "/jars");
        Assert.Equal(All.Order(StringComparer.Ordinal),
            (await page.Locator(".jar-row .row-name").AllInnerTextsAsync()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task JarName_OfTwoHundredLetters_IsRefusedWithWhatWouldBeRightAndNothingTypedIsLost()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        string name = new('n', 200);
        await PutUpAsync(page, kitchen, name);
        Assert.Contains("a name of 1 to 60 letters", await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        Assert.Equal(name, await page.GetByLabel("Name", new() { Exact = true }).InputValueAsync());
        Assert.Equal("750 g", await page.GetByLabel("How much in each jar").InputValueAsync());
    }

    private static async Task PutUpAsync(IPage page, RunningKitchen kitchen, string name)
    {
        await page.GotoAsync(kitchen.Address + "/put-up");
        await page.GetByLabel("How much in each jar").FillAsync("750 g");
        await page.GetByText("More, if you like").ClickAsync();
        await page.GetByLabel("Name", new() { Exact = true })
            .EvaluateAsync("(field, name) => { field.removeAttribute('maxlength'); field.value = name; }", name);
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        await page.Locator(".wrong-box, .done").First.WaitForAsync();
    }
}
