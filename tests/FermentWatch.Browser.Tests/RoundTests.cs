using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>The morning round, in a browser that runs no script.</summary>
public sealed class RoundTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Answer_TwentyFourJarsOnThreeShelvesOneWithFilm_TakesFiveTaps()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context =
            await chromium.NewContextAsync(new() { JavaScriptEnabled = false, ViewportSize = new() { Width = 390, Height = 844 } });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        foreach (string place in new[] { "kitchen counter", "cellar", "refrigerator" })
            await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", place, howMany: 8, daysAgo: 8);
        await page.GotoAsync(kitchen.Address + "/");
        int taps = 0;
        async Task TapAsync(ILocator target)
        {
            taps++;
            await target.ClickAsync();
        }
        ILocator Shelf(string name) => page.GetByRole(AriaRole.Button, new() { Name = $"All well but the ticked at {name}" });

        await TapAsync(Shelf("kitchen counter"));
        await TapAsync(page.GetByRole(AriaRole.Checkbox, new() { Name = "Jar 14" }));
        await TapAsync(page.GetByRole(AriaRole.Radiogroup, new() { Name = "What is not well with jar 14" })
            .GetByRole(AriaRole.Radio, new() { Name = "Film" }));
        await TapAsync(Shelf("cellar"));
        Assert.Contains("Skim it off with a clean spoon", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await TapAsync(Shelf("refrigerator"));

        Assert.Equal(5, taps);
        Assert.Contains("All looked at.", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        var jars = await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None);
        Assert.Equal(24, jars.Count);
        Assert.Equal(SightingKind.Film, Assert.IsType<Sighting>(Assert.Single(jars.Single(jar => jar.Number == 14).Observations)).Kind);
        Assert.All(jars.Where(jar => jar.Number != 14), jar => Assert.False(Assert.IsType<Look>(Assert.Single(jar.Observations)).Opened));
        await page.GotoAsync(kitchen.Address + "/jars/14");
        Assert.Contains("Nothing is forecast since a flat white film was seen, until it is settled or a pH is measured.",
            await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task UsualDay_TwentyJarsThreeToNoteTwoTastesOnePh_TakesFourteenTapsAndThreeKeys()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.GotoAsync(kitchen.Address + "/household");
        await page.ChooseAsync("a meter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).First.ClickAsync();
        await page.PutUpAsync(kitchen, "cabbage", "800 g", "2.25 %", "kitchen counter", howMany: 9, daysAgo: 10);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.5 %", "kitchen counter", howMany: 4, daysAgo: 10);
        await page.PutUpAsync(kitchen, "red cabbage", "800 g", "2.25 %", "cellar", howMany: 7, daysAgo: 4);
        await page.GotoAsync(kitchen.Address + "/");
        await page.GetByRole(AriaRole.Button, new() { Name = "All well at kitchen counter" }).ClickAsync();
        await page.GetByText("Written down: all well at 1 to 13").WaitForAsync();
        kitchen.Clock.Advance(TimeSpan.FromDays(1));
        await kitchen.SettleAsync();
        await page.GotoAsync(kitchen.Address + "/");
        int taps = 0, keys = 0;
        async Task TapAsync(ILocator target)
        {
            taps++;
            await target.ClickAsync();
        }

        foreach ((int jar, string what) in new[] { (3, "Film"), (7, "Pieces up"), (11, "Low brine") })
        {
            await TapAsync(page.GetByRole(AriaRole.Checkbox, new() { Name = $"Jar {jar} ", Exact = false }));
            await TapAsync(page.GetByRole(AriaRole.Radiogroup, new() { Name = $"What is not well with jar {jar}", Exact = true })
                .Locator("label", new() { HasText = what }));
        }
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "All well but 3, 7, 11 at kitchen counter" }));
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "All well at cellar" }));
        foreach (int jar in new[] { 1, 10 })
        {
            await TapAsync(page.GetByRole(AriaRole.Link, new() { Name = $"Taste jar {jar}", Exact = true }));
            await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Not yet" }));
        }
        await TapAsync(page.GetByRole(AriaRole.Link, new() { Name = "Measure jar 14", Exact = true }));
        await page.GetByRole(AriaRole.Heading, new() { Name = "Enter a pH" }).WaitForAsync();
        foreach (char key in "3.9")
        {
            keys++;
            await page.Keyboard.PressAsync(key.ToString());
        }
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Enter", Exact = true }));
        await page.GetByText("Written down for jar 14: pH 3.9 by meter", new() { Exact = false }).WaitForAsync();

        Assert.Equal((14, 3), (taps, keys));
        var jars = await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None);
        Assert.Equal(17, jars.Count(jar => jar.Observations.Exists(each => each is Look && each.At > kitchen.Now - NodaTime.Duration.FromHours(1))));
        Assert.Equal([3, 7, 11], jars.Where(jar => jar.Observations.Exists(each => each is Sighting)).Select(jar => jar.Number).Order());
        Assert.Equal([1, 10], jars.Where(jar => jar.Observations.Exists(each => each is Taste)).Select(jar => jar.Number).Order());
    }

    [Fact]
    public async Task Board_BackAndAnotherAnswerAtTheSameJar_IsNotDroppedButAskedOnThePageOfThatJar()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "cellar", howMany: 2, daysAgo: 8);
        await page.GotoAsync(kitchen.Address + "/");
        string id = await page.Locator("form.board input[name='Input.Id']").InputValueAsync();
        await AnswerAsync("Film");
        Assert.Contains("Skim it off with a clean spoon", await page.InnerTextAsync("main"), StringComparison.Ordinal);

        // As the page stands after the browser's back button.
        await page.GotoAsync(kitchen.Address + "/");
        await page.EvaluateAsync("id => document.querySelector(\"form.board input[name='Input.Id']\").value = id", id);
        await page.GetByText("cellar: all looked at").ClickAsync();
        await AnswerAsync("Pieces up");
        Assert.Equal("Seen at jar 2", await page.TitleAsync());
        Jar jar = (await kitchen.Services.GetRequiredService<IJarBook>().FindAsync(2, CancellationToken.None))!;
        Assert.Equal(SightingKind.Film, Assert.Single(jar.Standing.OfType<Sighting>()).Kind);

        async Task AnswerAsync(string what)
        {
            await page.GetByRole(AriaRole.Checkbox, new() { Name = "Jar 2" }).CheckAsync();
            await page.GetByRole(AriaRole.Radiogroup, new() { Name = "What is not well with jar 2" })
                .GetByRole(AriaRole.Radio, new() { Name = what }).CheckAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "All well but the ticked at cellar" }).ClickAsync();
        }
    }

    [Fact]
    public async Task WeekSheet_WhatStandsOnPaper_IsEnteredAfterwardsOnce()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "carrot", "900 g", "2.25 %", "cellar", daysAgo: 16);
        await page.GotoAsync(kitchen.Address + "/week-sheet?back=1");
        Assert.Equal(7, await page.Locator("td select").CountAsync());
        await page.Locator("td select").Nth(0).SelectOptionAsync(new SelectOptionValue { Label = "✓" });
        await page.Locator("td select").Nth(3).SelectOptionAsync(new SelectOptionValue { Label = "film" });
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter the sheet" }).ClickAsync();

        Assert.Contains("Entered.", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal(5, await page.Locator("td select").CountAsync());
        Jar jar = Assert.Single(await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None));
        Assert.Single(jar.Observations.OfType<Look>());
        Assert.Equal(SightingKind.Film, Assert.Single(jar.Observations.OfType<Sighting>()).Kind);
        Assert.All(jar.Observations, look => Assert.True(look.At < look.EnteredAt));
    }

    [Fact]
    public async Task AllWell_TakenBackOnThePageThatSaysIt_AreToBeLookedAtAgain()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", howMany: 3, daysAgo: 4);
        await page.GotoAsync(kitchen.Address + "/");
        await page.GetByRole(AriaRole.Button, new() { Name = "All well but the ticked at kitchen counter" }).ClickAsync();
        Assert.Contains("Written down: all well at 1 to 3.", await page.InnerTextAsync("main"), StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Button, new() { Name = "Take back" }).ClickAsync();

        string main = await page.InnerTextAsync("main");
        Assert.Contains("Taken back. Still to be looked at: 1 to 3.", main, StringComparison.Ordinal);
        Assert.DoesNotContain("Written down", main, StringComparison.Ordinal);
        var jars = await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None);
        Assert.All(jars, jar => Assert.NotNull(Assert.IsType<Look>(Assert.Single(jar.Observations)).VoidedAt));
    }

    [Fact]
    public async Task SlowForm_SaysThatItIsAtWorkAndIsNotSentTwice()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { ServiceWorkers = ServiceWorkerPolicy.Block });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 4);
        // The page is asked nothing while its answer is held back: it says by itself what it shows, and is tapped by itself.
        await page.AddInitScriptAsync("""
            addEventListener('DOMContentLoaded', () => {
              const words = document.querySelector('#at-work');
              if (words)
                new MutationObserver(() => { console.log(words.textContent); document.querySelector('[aria-busy]')?.click(); })
                  .observe(words, { childList: true });
            });
            """);
        await page.GotoAsync(kitchen.Address + "/jars/1");
        int sent = 0;
        var letGo = new TaskCompletionSource();
        await page.RouteAsync("**/jars/1", async route =>
        {
            if (route.Request.Method == "POST")
            {
                sent++;
                await letGo.Task;
            }
            await route.ContinueAsync();
        });
        ILocator well = page.GetByRole(AriaRole.Button, new() { Name = "All well" });
        Task<IConsoleMessage> said = page.WaitForConsoleMessageAsync();
        await well.DispatchEventAsync("click");
        Assert.Equal("Working on it", (await said).Text);
        letGo.SetResult();

        await page.GetByText("Looked at").First.WaitForAsync();
        Assert.Equal(1, sent);
        Assert.Equal("", await page.InnerTextAsync("#at-work"));
    }

    [Fact]
    public async Task Seen_PhotoAddedAfterwards_IsShownWithTheSighting()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 9);
        await page.GotoAsync(kitchen.Address + "/jars/1/seen");
        await page.GetByRole(AriaRole.Button, new() { Name = "A flat white film" }).ClickAsync();
        await page.GotoAsync(kitchen.Address + "/jars/1");
        await page.GetByText("Add a photo").ClickAsync();
        byte[] picture = await page.ScreenshotAsync(new() { Type = ScreenshotType.Jpeg });

        await page.GetByLabel("Photo").SetInputFilesAsync(new FilePayload { Name = "notes.pdf", MimeType = "application/pdf", Buffer = [1, 2, 3] });
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the photo" }).ClickAsync();
        Assert.Contains("Enter a JPEG, PNG or WebP picture.", await page.InnerTextAsync("[role=alert]"), StringComparison.Ordinal);

        await page.GetByText("Add a photo").ClickAsync();
        await page.GetByLabel("Photo").SetInputFilesAsync(await HugePictureAsync(kitchen));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the photo" }).ClickAsync();
        Assert.Equal("That is too large", await page.InnerTextAsync("h1"));
        Assert.Contains("A photo may have 20 MB", await page.InnerTextAsync("main"), StringComparison.Ordinal);

        await page.GotoAsync(kitchen.Address + "/jars/1");
        await page.GetByText("Add a photo").ClickAsync();
        await page.GetByLabel("Photo").SetInputFilesAsync(new FilePayload { Name = "film.jpg", MimeType = "image/jpeg", Buffer = picture });
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the photo" }).ClickAsync();
        ILocator shown = page.Locator(".photo-strip a");
        Assert.Equal("seen: a flat white film", await shown.Locator("img").GetAttributeAsync("alt"));
        byte[] kept = await (await context.APIRequest.GetAsync(new Uri(new Uri(kitchen.Address), await shown.GetAttributeAsync("href")).ToString()))
            .BodyAsync();
        Assert.Equal([0xFF, 0xD8], kept[..2]);
        Assert.Equal("Day 9 seen: a flat white film", await page.InnerTextAsync(".photo-strip span"));

        await page.GotoAsync(kitchen.Address + "/jars");
        string small = new Uri(new Uri(kitchen.Address), await page.Locator("img.row-photo").GetAttributeAsync("src")).ToString();
        IAPIResponse first = await context.APIRequest.GetAsync(small);
        Assert.InRange((await first.BodyAsync()).Length, 1, kept.Length - 1);
        IAPIResponse again = await context.APIRequest.GetAsync(small,
            new() { Headers = new Dictionary<string, string> { ["If-None-Match"] = first.Headers["etag"] } });
        Assert.Equal(304, again.Status);
    }

    [Fact]
    public async Task Onward_RightTaste_LeadsIntoTheColdWithTheCautionBesideIt()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 22);
        await page.GotoAsync(kitchen.Address + "/jars/1/taste");
        await page.GetByRole(AriaRole.Button, new() { Name = "Right" }).ClickAsync();
        Assert.Contains("public advice lets kraut work 3 to 6 weeks", await page.InnerTextAsync("form"), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Into the cold" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);
        Assert.Contains("refrigerator, in the cold", await page.InnerTextAsync("main"), StringComparison.Ordinal);

        // Of two changes in one instant nobody could say which was the last.
        kitchen.Clock.Advance(TimeSpan.FromMinutes(1));
        await page.GotoAsync(kitchen.Address + "/jars/1/on");
        await page.GetByRole(AriaRole.Button, new() { Name = "Thrown out" }).ClickAsync();
        Assert.Contains("a few words on why it was thrown out", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.GetByLabel("Why it is thrown out").FillAsync("too soft");
        await page.GetByRole(AriaRole.Button, new() { Name = "Thrown out" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 1);
        Assert.Contains("It stands among the past jars, and can be reopened there.", await page.InnerTextAsync(".done"), StringComparison.Ordinal);
        await page.GotoAsync(kitchen.Address + "/jars");
        Assert.Contains("No jar yet", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    // From the disk, as a phone would: handed over as bytes it goes through the driver as text, which has taken longer than any patience.
    private static async Task<string> HugePictureAsync(RunningKitchen kitchen)
    {
        string path = Path.Combine(kitchen.Folder, "huge.jpg");
        await File.WriteAllBytesAsync(path, new byte[50_000_000]);
        return path;
    }
}
