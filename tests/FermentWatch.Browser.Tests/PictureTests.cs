using System.Globalization;
using FermentWatch.Kitchen.Places;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>Pictures that are pointed at, looked into and read out; and the drawings in their place without script.</summary>
public sealed class PictureTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Course_ByKeyboard_GoesFromReadingToReadingAndLooksCloser()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { Locale = "en-GB" });
        IPage page = await FilledAsync(context, kitchen);
        List<string> complaints = Listen(page);
        await page.GotoAsync(kitchen.Address + "/jars/1");
        ILocator picture = page.GetByRole(AriaRole.Slider);
        await Assertions.Expect(picture)
            .ToHaveAttributeAsync("aria-valuetext", new System.Text.RegularExpressions.Regex(@"^Wed 14 Oct, \d\d:\d\d: pH 3.9 by strip"));

        await picture.FocusAsync();
        await page.Keyboard.PressAsync("PageUp");
        await Assertions.Expect(page.Locator(".picture-read")).ToContainTextAsync("pH 4.2 by meter");
        await Assertions.Expect(page.Locator(".picture-read")).ToContainTextAsync("expected pH");
        await page.Keyboard.PressAsync("Home");
        double before = await StepAsync(page, picture);
        await page.Keyboard.PressAsync("+");
        Assert.InRange(await StepAsync(page, picture), before * 0.5, before * 0.7);
        await page.Keyboard.PressAsync("0");
        Assert.InRange(await StepAsync(page, picture), before * 0.99, before * 1.01);
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task Course_WithoutScript_IsTheDrawingWithItsTableAndCsv()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await FilledAsync(context, kitchen);
        await page.GotoAsync(kitchen.Address + "/jars/1");

        Assert.True(await page.Locator("svg.course.wide").IsVisibleAsync());
        Assert.Equal(0, await page.GetByRole(AriaRole.Slider).CountAsync());
        Assert.Equal(1, await page.GetByText("The same as figures").CountAsync());
        string csv = await (await context.APIRequest.GetAsync($"{kitchen.Address}/api/v1/jars/1/course?format=csv")).TextAsync();
        Assert.StartsWith("at,what,unit,value,low,high,words\n", csv, StringComparison.Ordinal);
        Assert.Contains(",measured,ph,4.2,,,\"pH 4.2 by meter, checked in buffer\"\n", csv, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Place_PointedAtAndLookedInto_SaysWhatWasMeasuredAndAsksForFinerFigures()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await FilledAsync(context, kitchen);
        List<string> complaints = Listen(page);
        await page.GotoAsync(kitchen.Address + "/history?of=place%20cellar&from=2026-10-02");
        LocatorBoundingBoxResult plot = (await page.Locator(".u-over").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(plot.X + (plot.Width * 0.9f), plot.Y + 40);
        await Assertions.Expect(page.Locator(".picture-read")).ToContainTextAsync(new System.Text.RegularExpressions.Regex(@": 1[123]\.\d °C"));

        IRequest finer = await page.RunAndWaitForRequestAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Look closer" }).ClickAsync(),
            request => request.Url.Contains("/api/v1/history?place=cellar", StringComparison.Ordinal));
        Assert.DoesNotContain("from=2026-10-01T22", finer.Url, StringComparison.Ordinal);
        Assert.Equal(200, (await finer.ResponseAsync())!.Status);
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task Beside_TwoJars_ReadsBothOutByDaysSincePacking()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await FilledAsync(context, kitchen);
        List<string> complaints = Listen(page);
        await page.GotoAsync(kitchen.Address + "/jars/1/beside");
        await page.GetByLabel("Beside").SelectOptionAsync("2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        await Assertions.Expect(page.Locator(".picture-read strong")).ToHaveTextAsync("Day 9");
        await Assertions.Expect(page.Locator(".picture-read")).ToContainTextAsync("jar 1 meter 4.2, strip 3.9");
        await Assertions.Expect(page.Locator(".picture-read")).ToContainTextAsync("jar 2 not there yet");
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task FirstPage_CarriesNoPicture()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await FilledAsync(context, kitchen);
        var asked = new List<string>();
        page.Request += (_, request) => asked.Add(request.Url);
        await page.GotoAsync(kitchen.Address + "/");
        await page.WaitForLoadStateAsync(LoadState.Load);
        Assert.DoesNotContain(asked, url => url.Contains("pictures", StringComparison.Ordinal));
    }

    /// <summary>How far one press of an arrow goes, in seconds.</summary>
    private static async Task<double> StepAsync(IPage page, ILocator picture)
    {
        double from = await AtAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        return await AtAsync() - from;

        async Task<double> AtAsync() => double.Parse((await picture.GetAttributeAsync("aria-valuenow"))!, CultureInfo.InvariantCulture);
    }

    /// <summary>What the browser has to complain of: errors of the script, and what the content policy refused.</summary>
    private static List<string> Listen(IPage page)
    {
        var complaints = new List<string>();
        page.PageError += (_, error) => complaints.Add(error);
        page.Console += (_, message) =>
        {
            if (message.Type is "error")
                complaints.Add(message.Text);
        };
        return complaints;
    }

    private static async Task<IPage> FilledAsync(IBrowserContext context, RunningKitchen kitchen)
    {
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        var places = await kitchen.Services.GetRequiredService<IPlaceBook>().AllAsync(CancellationToken.None);
        await kitchen.AddSensorAsync("cellar-shelf", places.Single(place => place.Name == "cellar").Id, 14, day =>
            12.5 + (0.6 * Math.Sin(day * Math.Tau)));
        await page.PutUpAsync(kitchen, "cabbage", "1.2 kg", "2.25 %", "cellar", daysAgo: 9);
        await page.PutUpAsync(kitchen, "carrot", "900 g", "2.5 %", "kitchen counter", daysAgo: 4);
        await page.MeasureAsync(kitchen, 1, "4.2", "Meter", check: true);
        kitchen.Clock.Advance(TimeSpan.FromHours(5));
        await page.MeasureAsync(kitchen, 1, "3.9", "Strip", check: true);
        return page;
    }
}
