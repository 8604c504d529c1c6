using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>Who is told of the round and how, set up in a browser that runs no script.</summary>
public sealed class NoticesTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Notices_TestToAReceiverThatIsNotThere_SaysWhyAndTheRouteCanBeRemoved()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.ReachAsync(kitchen, "Mira", "Webhook", "http://127.0.0.1:9/push");
        Assert.Contains("Added.", await page.InnerTextAsync("main"), StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Button, new() { Name = "Send a test to Mira" }).ClickAsync();
        Assert.Contains("The test did not arrive", await page.InnerTextAsync("[role=alert]"), StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Button, new() { Name = "Remove Mira" }).ClickAsync();
        Assert.Equal(0, await page.GetByText("http://127.0.0.1:9/push").CountAsync());
    }

    [Fact]
    public async Task Notices_AddressThatIsNone_IsRefusedWithWhatWouldBeRight()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.ReachAsync(kitchen, "Mira", "Webhook", "the kitchen table");
        Assert.Contains("Enter a web address such as https://push.example.net/kitchen.", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal(0, await page.GetByRole(AriaRole.Button, new() { Name = "Send a test" }).CountAsync());
    }
}
