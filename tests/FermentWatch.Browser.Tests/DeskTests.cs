using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>At a desk the other jars stand beside the one that is open.</summary>
public sealed class DeskTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Jar_AtADesk_HasTheOthersBesideItAndTheOneThatIsOpenMarked()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await FilledAsync(kitchen, width: 1280);
        await page.GotoAsync(kitchen.Address + "/jars/2");
        ILocator beside = page.Locator("aside.jars-beside");
        await beside.Locator("a.row[aria-current=page]").WaitForAsync();

        Assert.Equal(["jars/1", "jars/2", "jars/3"], await HrefsAsync(beside.Locator("a.row")));
        Assert.Equal(["jars/2"], await HrefsAsync(beside.Locator("a.row[aria-current=page]")));
        await beside.Locator("a.row[href='jars/3']").ClickAsync();
        await page.ArriveAsync(kitchen.Address + "/jars/3");
        Assert.Equal(0, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth"));
    }

    [Theory]
    [InlineData(390, true)]
    [InlineData(1280, false)]
    public async Task Jar_OnAPhoneOrWithoutScript_StandsAloneAndAsksForNoList(int width, bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await FilledAsync(kitchen, width, script);
        var asked = new List<string>();
        page.Request += (_, request) => asked.Add(new Uri(request.Url).AbsolutePath);
        await page.GotoAsync(kitchen.Address + "/jars/2", new() { WaitUntil = WaitUntilState.NetworkIdle });

        Assert.DoesNotContain("/jars", asked);
        Assert.False(await page.Locator("aside.jars-beside").IsVisibleAsync());
    }

    private async Task<IPage> FilledAsync(RunningKitchen kitchen, int width, bool script = true)
    {
        IBrowserContext context = await chromium.NewContextAsync(
            new() { JavaScriptEnabled = script, ViewportSize = new() { Width = width, Height = 900 } });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "800 g", "2.25 %", "cellar", howMany: 3, daysAgo: 3);
        return page;
    }

    private static Task<string[]> HrefsAsync(ILocator links) =>
        links.EvaluateAllAsync<string[]>("links => links.map(link => link.getAttribute('href')).sort()");
}
