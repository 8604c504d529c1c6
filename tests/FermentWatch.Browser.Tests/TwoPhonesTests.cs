using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace FermentWatch.Browser.Tests;

/// <summary>Two phones with the same form open: no change is lost, and the later one sees what changed.</summary>
public sealed class TwoPhonesTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Household_SavedByBoth_TheLaterSeesWhatTheOtherChangedAndMayInsist()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        (IPage first, IPage second) = await BothAtAsync(kitchen, "/household");
        await first.GetByLabel("Morning round at").FillAsync("06:30");
        await first.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).First.ClickAsync();
        await first.GetByText("Saved.").WaitForAsync();

        await second.GetByLabel("Name of the kitchen").FillAsync("Number Ten");
        await second.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).First.ClickAsync();
        Assert.Contains("Somebody else saved meanwhile: morning round 06:30 (this form was opened with 07:00).",
            await second.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        Assert.Equal(("Number Nine", new LocalTime(6, 30)), await HouseholdAsync(kitchen));

        await second.GetByLabel("Morning round at").FillAsync("06:30");
        await second.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).First.ClickAsync();
        await second.GetByText("Saved.").WaitForAsync();
        Assert.Equal(("Number Ten", new LocalTime(6, 30)), await HouseholdAsync(kitchen));
    }

    [Fact]
    public async Task Jar_PutRightByBoth_TheLaterSeesWhatTheOtherPutRight()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        (IPage first, IPage second) = await BothAtAsync(kitchen, "/jars/1/correct");
        await first.GetByLabel("Salt", new() { Exact = true }).FillAsync("3 %");
        await first.GetByRole(AriaRole.Button, new() { Name = "Put right" }).ClickAsync();
        await first.ArriveAnsweredAsync(kitchen, 1);

        await second.GetByLabel("Closed with").SelectOptionAsync("Tight");
        await second.GetByRole(AriaRole.Button, new() { Name = "Put right" }).ClickAsync();
        Assert.Contains("Put right meanwhile: salt 3 %, weighed (before: 2.25 %, weighed, Ada).", await second.InnerTextAsync(".wrong-box"),
            StringComparison.Ordinal);
        Jar jar = (await kitchen.Services.GetRequiredService<IJarBook>().FindAsync(1, default))!;
        Assert.Equal((3d, Lid.Vented), (jar.Salting.Percent!.Value, jar.Lid));
    }

    [Fact]
    public async Task Ph_TheSameFromTwoTabs_IsWrittenDownOnce()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        (IPage first, IPage second) = await BothAtAsync(kitchen, "/jars/1/ph");
        foreach ((IPage tab, string ph) in new[] { (first, "4.1"), (second, "4.1"), (first, "4.0") })
        {
            await tab.GotoAsync(kitchen.Address + "/jars/1/ph");
            await tab.GetByLabel("pH", new() { Exact = true }).FillAsync(ph);
            await tab.ChooseAsync("Meter");
            await tab.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
            await tab.ArriveAnsweredAsync(kitchen, 1);
            Assert.Contains($"pH {ph}", await tab.InnerTextAsync(".done"), StringComparison.Ordinal);
        }
        Jar jar = (await kitchen.Services.GetRequiredService<IJarBook>().FindAsync(1, default))!;
        Assert.Equal([4.0, 4.1], jar.Standing.OfType<PhMeasurement>().Select(each => each.Ph).Order());
    }

    private async Task<(IPage First, IPage Second)> BothAtAsync(RunningKitchen kitchen, string path)
    {
        IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        (IPage first, IPage second) = (await context.NewPageAsync(), await context.NewPageAsync());
        await first.SetUpAsync(kitchen);
        await first.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 2);
        foreach (IPage page in new[] { first, second })
            await page.GotoAsync(kitchen.Address + path);
        return (first, second);
    }

    private static async Task<(string, LocalTime)> HouseholdAsync(RunningKitchen kitchen)
    {
        Household household = await kitchen.Services.GetRequiredService<IHouseholdBook>().ReadAsync(default);
        return (household.Name, household.RoundAt);
    }
}
