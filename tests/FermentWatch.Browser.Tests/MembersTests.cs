using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>Who does the round, who looks in, and days away, in a browser that runs no script.</summary>
public sealed class MembersTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Guest_ByLink_AnswersTheRoundAndNothingElseUntilItIsWithdrawn()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext owner = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await owner.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "By taste", "kitchen counter", howMany: 3, daysAgo: 2);
        string link = await page.MakeGuestLinkAsync(kitchen, "Ben");

        await using IBrowserContext guest = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage other = await guest.NewPageAsync();
        await other.GotoAsync(link);
        await other.GetByRole(AriaRole.Checkbox, new() { Name = "Jar 2" }).CheckAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "All well but the ticked at kitchen counter" }).ClickAsync();
        Assert.Equal("2", await other.GetByLabel("Jar", new() { Exact = true }).InputValueAsync());
        await other.GetByLabel("What was seen").SelectOptionAsync("Film");
        await other.GetByRole(AriaRole.Button, new() { Name = "Tell the household" }).ClickAsync();
        Assert.Contains("the household is told", await other.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Contains("All looked at", await other.InnerTextAsync("main"), StringComparison.Ordinal);
        await other.GotoAsync(kitchen.Address + "/jars");
        Assert.Contains("/sign-in", other.Url, StringComparison.Ordinal);

        await page.GotoAsync(kitchen.Address + "/jars/2");
        Assert.Contains("Ben (guest)", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GotoAsync(kitchen.Address + "/household");
        await page.GetByRole(AriaRole.Button, new() { Name = "Withdraw the link of Ben" }).ClickAsync();
        IResponse? closed = await other.GotoAsync(link);
        Assert.Equal(410, closed!.Status);
        Assert.Contains("This link is closed", await other.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Child_AddedWithDays_LooksAndIsSentToAnAdultForTheRest()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext owner = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await owner.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "By taste", "kitchen counter", daysAgo: 2);
        await page.AddMemberAsync(kitchen, "Lena", child: true);
        await page.GetByText("Days and quiet hours of Lena").ClickAsync();
        await page.Locator("li", new() { HasText = "Lena" }).GetByRole(AriaRole.Checkbox, new() { Name = "Sunday" }).UncheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save Lena" }).ClickAsync();
        Assert.Contains("child; Mon, Tue, Wed, Thu, Fri, Sat", await page.InnerTextAsync("main"), StringComparison.Ordinal);

        await using IBrowserContext child = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage other = await child.NewPageAsync();
        await other.GotoAsync(kitchen.Address + "/sign-in");
        await other.GetByLabel("Name").FillAsync("Lena");
        await other.GetByLabel("Password").FillAsync(Walks.Password);
        await other.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "All well but the ticked at kitchen counter" }).ClickAsync();
        Assert.Contains("All looked at", await other.InnerTextAsync("main"), StringComparison.Ordinal);
        await other.GotoAsync(kitchen.Address + "/household");
        await other.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        Assert.Contains("That is for an adult", await other.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task BeforeYouGo_PausedAndTakenUpAgain_IsSaidOnTheRoundAndWherePeoplePutUp()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext owner = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await owner.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "By taste", "kitchen counter", daysAgo: 2);
        await page.AskBeforeGoingAsync(kitchen, 0, 5);
        Assert.Contains("Put up within five days of leaving", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Pause until" }).ClickAsync();
        await page.GotoAsync(kitchen.Address + "/put-up");
        Assert.Contains("Rounds are paused from today", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GotoAsync(kitchen.Address + "/");
        Assert.Contains("Rounds are paused until", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new() { Name = "Take them up again" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take the rounds up again" }).ClickAsync();
        await page.GotoAsync(kitchen.Address + "/");
        Assert.DoesNotContain("paused", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }
}
