using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>What a thumb has to scroll at 390 px, the day after a round, with twenty jars of one to three weeks and no trouble.</summary>
public sealed class PhoneLengthTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Pages_OfTwentyJarsAtPhoneWidth_AreShort()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        (IBrowserContext context, IPage page) = await TwentyJarsAsync(kitchen);
        await using IBrowserContext _ = context;
        await LookAndSleepAsync(kitchen, page);

        Assert.InRange(await LengthAsync(page, kitchen.Address + "/"), 700, 1800);
        Assert.InRange(await LengthAsync(page, kitchen.Address + "/jars"), 700, 2500);
        Assert.InRange(await LengthAsync(page, kitchen.Address + "/jars/20"), 700, 2500);
    }

    private async Task<(IBrowserContext Context, IPage Page)> TwentyJarsAsync(RunningKitchen kitchen)
    {
        IBrowserContext context = await chromium.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "carrot", "900 g", "2.25 %", "kitchen counter", howMany: 4, daysAgo: 11, sour: "ALittleSour");
        await page.PutUpAsync(kitchen, "carrot", "700 g", "2.25 %", "kitchen counter", howMany: 6, daysAgo: 10, sour: "ALittleSour");
        await page.PutUpAsync(kitchen, "red cabbage", "900 g", "2.25 %", "cellar", howMany: 10, daysAgo: 21);
        await kitchen.SettleAsync();
        return (context, page);
    }

    /// <summary>Everything looked at, and the day after.</summary>
    private static async Task LookAndSleepAsync(RunningKitchen kitchen, IPage page)
    {
        await page.GotoAsync(kitchen.Address + "/");
        foreach (string shelf in new[] { "kitchen counter", "cellar" })
            await page.GetByRole(AriaRole.Button, new() { Name = $"All well at {shelf}" }).ClickAsync();
        await page.GetByText("All looked at.").WaitForAsync();
        kitchen.Clock.Advance(TimeSpan.FromDays(1));
        await kitchen.SettleAsync();
    }

    private static async Task<int> LengthAsync(IPage page, string address)
    {
        await page.GotoAsync(address);
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        return await page.EvaluateAsync<int>("document.documentElement.scrollHeight");
    }
}
