using FermentWatch.Kitchen.Jars;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>A household that uses no pointer: every step by the keyboard, and it is always seen where one stands.</summary>
public sealed class KeyboardTests(Chromium chromium) : IClassFixture<Chromium>
{
    /// <summary>More presses than the longest page has to stop at.</summary>
    private const int MostPresses = 150;

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Day_SignedOutToDone_TakesNoPointerAndTheFocusIsSeenAtEveryStop(int width, int height)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await PrepareAsync(kitchen);
        await using IBrowserContext context = await chromium.NewContextAsync(new() {
            ViewportSize = new() { Width = width, Height = height } });
        IPage page = await context.NewPageAsync();
        await page.GotoAsync(kitchen.Address + "/");
        await TypeAsync(page, page.GetByLabel("Name"), Walks.User);
        await TypeAsync(page, page.GetByLabel("Password"), Walks.Password);
        await PressAsync(page, Button(page, "Sign in"));
        await page.Locator("nav.rooms").WaitForAsync();

        await ReachAsync(page, page.GetByRole(AriaRole.Checkbox, new() { Name = "Jar 2" }));
        await page.Keyboard.PressAsync("Space");
        await ChooseAsync(page, page.GetByRole(AriaRole.Radiogroup, new() { Name = "What is not well with jar 2" })
            .GetByRole(AriaRole.Radio, new() { Name = "Film" }));
        await PressAsync(page, Button(page, "All well but 2"));
        await page.GetByText("Skim it off with a clean spoon").First.WaitForAsync();
        await PressAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "Taste jar 1", Exact = true }));
        await PressAsync(page, Button(page, "Not yet"));
        await page.GetByText("Written down for jar 1").First.WaitForAsync();
        await PressAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "Measure jar 3", Exact = true }));
        await TypeAsync(page, page.GetByLabel("pH", new() { Exact = true }), "3.9");
        await PressAsync(page, Button(page, "Enter"));
        await page.GetByText("Written down for jar 3").First.WaitForAsync();

        await PressAsync(page, page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new() { Name = "Put up" }));
        await ChooseAsync(page, page.Locator("input[name='Input.What'][value='carrot']"));
        await TypeAsync(page, page.GetByLabel("How much in each jar"), "900 g");
        await PressAsync(page, Button(page, "Put up"));
        await page.UntilAtAsync(address => address.Contains("/jars/4?new=1", StringComparison.Ordinal));

        await page.GotoAsync(kitchen.Address + "/jars/4/correct");
        await ReachAsync(page, page.GetByLabel("Closed with"));
        await page.Keyboard.TypeAsync("Tight");
        await PressAsync(page, Button(page, "Put right"));
        await page.ArriveAnsweredAsync(kitchen, 4);

        Assert.Equal(["1 Look", "1 Taste", "2 Sighting", "3 Look", "3 PhMeasurement"], (await JarsAsync(kitchen))
            .SelectMany(jar => jar.Standing.Where(each => each.At == kitchen.Now).Select(each => $"{jar.Number} {each.GetType().Name}"))
            .Order(StringComparer.Ordinal));
        Assert.Equal(("carrot", Lid.Tight), ((await JarsAsync(kitchen)).Single(jar => jar.Number == 4) is var put ? (put.Name, put.Lid) : default));
    }

    [Fact]
    public async Task SkipLink_IsTheFirstStop_AndLeadsPastTheBar()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await PrepareAsync(kitchen);
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await context.NewPageAsync();
        await page.GotoAsync(kitchen.Address + "/sign-in");
        await TypeAsync(page, page.GetByLabel("Name"), Walks.User);
        await TypeAsync(page, page.GetByLabel("Password"), Walks.Password);
        await PressAsync(page, Button(page, "Sign in"));
        await page.Locator("nav.rooms").WaitForAsync();
        await page.GotoAsync(kitchen.Address + "/jars/1");
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("skip", await page.EvaluateAsync<string>("document.activeElement.className"));
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.PressAsync("Tab");
        Assert.True(await page.EvaluateAsync<bool>("document.querySelector('main').contains(document.activeElement)"));
    }

    private async Task PrepareAsync(RunningKitchen kitchen)
    {
        await using IBrowserContext owner = await chromium.NewContextAsync();
        IPage page = await owner.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.GotoAsync(kitchen.Address + "/household");
        await page.ChooseAsync("a meter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).First.ClickAsync();
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", daysAgo: 14);
        await page.PutUpAsync(kitchen, "cabbage", "800 g", "2.5 %", "kitchen counter", daysAgo: 3);
        await page.PutUpAsync(kitchen, "red cabbage", "800 g", "2.25 %", "kitchen counter", daysAgo: 4);
        // Whoever has not looked for days is told to look first, and tastes nothing.
        await page.GotoAsync(kitchen.Address + "/");
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "Opened" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "All well" }).First.ClickAsync();
        await page.GetByText("Written down: all well at 1 to 3").WaitForAsync();
        kitchen.Clock.Advance(TimeSpan.FromDays(1));
        await kitchen.SettleAsync();
    }

    private static async Task<IReadOnlyList<Jar>> JarsAsync(RunningKitchen kitchen) =>
        await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None);

    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name }).First;

    private static async Task TypeAsync(IPage page, ILocator field, string text)
    {
        await ReachAsync(page, field);
        await page.Keyboard.TypeAsync(text);
    }

    private static async Task PressAsync(IPage page, ILocator target)
    {
        await ReachAsync(page, target);
        await page.Keyboard.PressAsync("Enter");
    }

    /// <summary>Goes on by the tab key until the focus is where it is meant to be.</summary>
    private static async Task ReachAsync(IPage page, ILocator target)
    {
        try
        {
            await target.WaitForAsync();
        }
        catch (TimeoutException)
        {
            Assert.Fail($"{target} is not on {page.Url}: {await page.InnerTextAsync("main")}");
        }
        for (int presses = 0; !await target.EvaluateAsync<bool>("each => each === document.activeElement"); presses++)
        {
            Assert.True(presses < MostPresses, $"{target} is not reached by the tab key on {page.Url}");
            await page.Keyboard.PressAsync("Tab");
            Assert.Equal("", await WhyNotSeenAsync(page));
        }
    }

    /// <summary>One of a few: the tab key goes to the group, the arrows within it.</summary>
    private static async Task ChooseAsync(IPage page, ILocator radio)
    {
        await radio.WaitForAsync();
        string name = (await radio.GetAttributeAsync("name"))!;
        for (int presses = 0; await page.EvaluateAsync<string>("document.activeElement.name ?? ''") != name; presses++)
        {
            Assert.True(presses < MostPresses, $"{name} is not reached by the tab key on {page.Url}");
            await page.Keyboard.PressAsync("Tab");
            Assert.Equal("", await WhyNotSeenAsync(page));
        }
        for (int presses = 0; !await radio.IsCheckedAsync(); presses++)
        {
            Assert.True(presses < MostPresses, $"{radio} is not reached by the arrows on {page.Url}");
            await page.Keyboard.PressAsync("ArrowDown");
        }
        Assert.Equal("", await WhyNotSeenAsync(page));
    }

    /// <summary>Why it is not seen where the focus is; empty where it is: a heavy outline, in the window, under nothing else.</summary>
    internal static Task<string> WhyNotSeenAsync(IPage page) => page.EvaluateAsync<string>("""
        () => {
          const at = document.activeElement;
          if (at === document.body || at === document.documentElement)
            return '';
          const what = at.outerHTML.slice(0, 140);
          const drawn = [at, at.nextElementSibling, at.closest('label')].filter(Boolean).find(each => {
            const style = getComputedStyle(each);
            return style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2 && style.opacity !== '0';
          });
          if (!drawn)
            return 'no outline: ' + what;
          const box = drawn.getBoundingClientRect();
          const x = Math.min(Math.max(box.left + box.width / 2, 0), innerWidth - 1), y = box.top + Math.min(box.height / 2, 20);
          if (y < 0 || y > innerHeight)
            return `out of the window at ${y}: ${what}`;
          const over = document.elementFromPoint(x, y);
          const label = at.closest('label');
          return over && (drawn.contains(over) || over.contains(at) || label?.contains(over)) ? '' : `under ${over?.outerHTML.slice(0, 80)}: ${what}`;
        }
        """);
}
