using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>What a thumb has to scroll at 390 px, and what a usual day takes, with twenty jars of one to three weeks and no trouble.</summary>
public sealed class PhoneLengthTests(Chromium chromium) : IClassFixture<Chromium>
{
    private int _taps, _keys;

    [Fact]
    public async Task Pages_OfTwentyJarsAtPhoneWidth_AreShort()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        (IBrowserContext context, IPage page) = await TwentyJarsAsync(kitchen, "nothing");
        await using IBrowserContext _ = context;

        Assert.InRange(await LengthAsync(page, kitchen.Address + "/"), 700, 1800);
        Assert.InRange(await LengthAsync(page, kitchen.Address + "/jars"), 700, 2500);
        Assert.InRange(await LengthAsync(page, kitchen.Address + "/jars/1"), 700, 2500);
    }

    /// <summary>A round of twenty with three to note, two tastes and one pH.</summary>
    [Fact]
    public async Task UsualDay_OfTwentyJars_TakesFourteenTapsAndThreeKeys()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        (IBrowserContext context, IPage page) = await TwentyJarsAsync(kitchen, "a meter");
        await using IBrowserContext _ = context;
        await page.GotoAsync(kitchen.Address + "/");

        foreach ((int jar, string what) in new[] { (4, "Film"), (9, "Pieces up") })
            await NoteAsync(page, jar, what);
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "All well but 4, 9 at kitchen counter" }));
        await NoteAsync(page, 17, "Low brine");
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "All well but 17 at cellar" }));
        foreach (string verdict in new[] { "Not yet", "Nearly" })
        {
            await TapAsync(page.GetByRole(AriaRole.Link, new() { NameRegex = new("^Taste jar") }).First);
            await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = verdict }));
        }
        await TapAsync(page.GetByRole(AriaRole.Link, new() { NameRegex = new("^Measure jar") }).First);
        await page.GetByLabel("pH", new() { Exact = true }).PressSequentiallyAsync("3.9");
        _keys += 3;
        await TapAsync(page.GetByRole(AriaRole.Radio, new() { Name = "Meter" }));
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Enter", Exact = true }));
        await page.WaitForURLAsync("**/?jar=*");

        Assert.InRange(_taps, 1, 15);
        Assert.Equal(3, _keys);
        var entered = (await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None)).SelectMany(jar => jar.Observations).ToList();
        Assert.Equal((37, 3, 2, 1), (entered.OfType<Look>().Count(), entered.OfType<Sighting>().Count(), entered.OfType<Taste>().Count(), entered.OfType<PhMeasurement>().Count()));
    }

    private async Task NoteAsync(IPage page, int jar, string what)
    {
        await TapAsync(page.GetByRole(AriaRole.Checkbox, new() { NameRegex = new($"^Jar {jar} ") }));
        await TapAsync(page.GetByRole(AriaRole.Radiogroup, new() { Name = $"What is not well with jar {jar}" }).GetByRole(AriaRole.Radio, new() { Name = what }));
    }

    private Task TapAsync(ILocator target)
    {
        _taps++;
        return target.ClickAsync();
    }

    private async Task<(IBrowserContext Context, IPage Page)> TwentyJarsAsync(RunningKitchen kitchen, string tool)
    {
        IBrowserContext context = await chromium.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", howMany: 4, daysAgo: 21, sour: "ALittleSour");
        await page.PutUpAsync(kitchen, "carrot", "700 g", "2.25 %", "kitchen counter", howMany: 6, daysAgo: 14, sour: "ALittleSour");
        await page.PutUpAsync(kitchen, "red cabbage", "900 g", "2.25 %", "cellar", howMany: 10, daysAgo: 7);
        await page.GotoAsync(kitchen.Address + "/household");
        await page.ChooseAsync(tool);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await page.WaitForURLAsync("**/household?saved=1");
        // A usual day: yesterday somebody looked.
        await page.GotoAsync(kitchen.Address + "/");
        foreach (string shelf in new[] { "kitchen counter", "cellar" })
            await page.GetByRole(AriaRole.Button, new() { Name = $"All well at {shelf}" }).ClickAsync();
        await page.GetByText("All looked at.").WaitForAsync();
        kitchen.Clock.Advance(TimeSpan.FromDays(1));
        await kitchen.SettleAsync();
        return (context, page);
    }

    private static async Task<int> LengthAsync(IPage page, string address)
    {
        await page.GotoAsync(address);
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        await page.ScreenshotAsync(new() { FullPage = true, Path = "/tmp/len.png" });
        return await page.EvaluateAsync<int>("document.documentElement.scrollHeight");
    }
}
