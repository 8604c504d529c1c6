using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>Every page at phone and desk width, light and dark: a picture to be looked at, and no finding of axe.</summary>
public sealed partial class PagePictureTests(Chromium chromium) : IClassFixture<Chromium>
{
    private static readonly (string Name, string Path)[] Pages =
    [
        ("today", "/"), ("today-guide", "/?guide=Film&jar=4"), ("seen", "/jars/4/seen"), ("taste", "/jars/4/taste"), ("onward", "/jars/4/on"),
            ("week-sheet", "/week-sheet"),
        ("jar-trouble", "/jars/5"), ("jars", "/jars"), ("jars-new", "/jars?put-up=4,5,6"), ("jar-young", "/jars/1?new=1"),
        ("jar-measured", "/jars/2"), ("jar-old", "/jars/3"), ("ph", "/jars/2/ph"), ("narrower", "/jars/1/narrower"),
        ("what-if", "/jars/1/what-if?ready=2026-12-24"), ("titration", "/jars/2/titration"), ("guides", "/guides"),
        ("put-up", "/put-up"), ("correct", "/jars/2/correct?to=Vented"), ("past", "/jars/past"), ("past-found", "/jars/past?find=daikon"),
        ("record", "/jars/2/record"), ("record-past", "/jars/6/record"), ("labels", "/labels?jars=1-3&sheet=a4-70x37&taken=2"), ("cold", "/cold"),
        ("looking-back", "/looking-back"), ("labels-wrong", "/labels?jars=none"), ("jar-past", "/jars/6"), ("beside", "/jars/2/beside?with=4"),
        ("history", "/history?of=place%20cellar"), ("history-probe", "/history?of=sensor%20brine-probe&quantity=millivolts"),
        ("history-wrong", "/history?of=place%20attic"), ("sensors", "/sensors"), ("sensor", "/sensors/cellar-shelf"),
        ("calibration", "/sensors/brine-probe/calibration"), ("household", "/household"), ("notices", "/notices"), ("password", "/password"),
        ("health", "/health"), ("put-up-brine", "/put-up?brine-of=4"), ("put-up-again", "/put-up?like=2"),
            ("components", "/components"), ("not-found", "/jars/999"),
        ("plan", "/plan"), ("plan-made", "/plan?servings=3&eaters=4&from=2026-12-01&until=2027-03-31&days=Saturday&days=Sunday"),
        ("plan-wrong", "/plan?servings=many"), ("recipes", "/recipes"), ("recipe-new", "/recipes/new"), ("brine", "/salt?reading=1.034"),
        ("salt-mend", "/jars/1/salt"), ("salt-mended", "/jars/1/salt?happened=TooLittle&went_in=1%20%25"), ("portion", "/jars/2/portion"),
        ("tag", "/jars/6/tag"),
    ];

    /// <summary>The short run looks at the phone in light and the desk in dark; the long one at four widths in both.</summary>
    private static readonly (int Width, ColorScheme Scheme)[] Looks = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1"
        ? [.. from width in (int[])[320, 390, 1280, 1920] from scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark] select (width, scheme)]
        : [(390, ColorScheme.Light), (1280, ColorScheme.Dark)];

    private static readonly AxeRunOptions AlsoEnhanced = Asking(("color-contrast-enhanced", true));

    /// <summary>Axe reads the colours of the style sheet, which are not those on the screen then.</summary>
    private static readonly AxeRunOptions ButColours = Asking(("color-contrast-enhanced", false), ("color-contrast", false));

    public static string Folder { get; } = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "pictures")).FullName;

    [Fact]
    public async Task EveryPage_AtPhoneAndDeskWidthInLightAndDark_IsDrawnAndAxeFindsNothing()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(("Web:PublicAddress", "https://kitchen.example.org"));
        var findings = new List<string>();
        Array.ForEach(Directory.GetFiles(Folder, "*.png"), File.Delete);
        await using (IBrowserContext owner = await chromium.NewContextAsync())
        {
            IPage page = await owner.NewPageAsync();
            string setUp = await kitchen.SetUpAddressAsync();
            await LookAsync(page, setUp, "set-up", findings);
            await FillAsync(page, kitchen);
            foreach ((string name, string path) in Pages)
                await LookAsync(page, kitchen.Address + path, name, findings);
            await LookAtErrorsAsync(page, kitchen, findings);
            await LookAtQuestionsAsync(page, kitchen, findings);
            await LookAtAbsenceAsync(page, kitchen, findings);
        }
        await LookAtChildAsync(kitchen, findings);
        string asked = await AskAsync(kitchen);
        await using (IBrowserContext stranger = await chromium.NewContextAsync())
        {
            IPage page = await stranger.NewPageAsync();
            await LookAsync(page, kitchen.Address + "/sign-in", "sign-in", findings);
            await LookAsync(page, kitchen.Address + asked, "answer", findings);
        }
        Assert.True(findings.Count == 0, string.Join(Environment.NewLine, findings));
        Assert.Equal((Pages.Length + 12) * Looks.Length, Directory.GetFiles(Folder, "*.png").Length);
    }

    /// <summary>Who asks for more contrast, or for colours of their own, gets the same pages.</summary>
    [Theory]
    [InlineData(Contrast.More, ForcedColors.None, "more-contrast")]
    [InlineData(Contrast.NoPreference, ForcedColors.Active, "own-colours")]
    public async Task CorePages_WithMoreContrastOrOwnColours_AreDrawnAndAxeFindsNothing(Contrast contrast, ForcedColors colours, string look)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { Contrast = contrast, ForcedColors = colours });
        string folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, $"pictures-{look}")).FullName;
        Array.ForEach(Directory.GetFiles(folder, "*.png"), File.Delete);
        IPage page = await context.NewPageAsync();
        await FillAsync(page, kitchen);
        var findings = new List<string>();
        string[] core = ["components", "today", "today-guide", "jars", "jar-measured", "jar-trouble", "ph", "taste", "put-up", "beside", "history"];
        foreach ((string name, string path) in Pages.Where(each => core.Contains(each.Name)))
        {
            await page.GotoAsync(kitchen.Address + path);
            await DrawAsync(page, name, findings, folder);
        }
        Assert.True(findings.Count == 0, string.Join(Environment.NewLine, findings));
        Assert.Equal(core.Length * Looks.Length, Directory.GetFiles(folder, "*.png").Length);
    }

    /// <summary>Whatever is tapped is 48 px high and wide at least (kitchen.md), and what has the focus is outlined heavily.</summary>
    [Fact]
    public async Task Components_WhatIsTapped_IsLargeEnoughAndShowsTheFocus()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        IPage page = await context.NewPageAsync();
        await FillAsync(page, kitchen);
        await page.GotoAsync(kitchen.Address + "/components");
        string[] small = await page.EvaluateAsync<string[]>("""
            () => [...document.querySelectorAll('main button, main a.button, main select, main input, main .row, main summary, nav a')]
              .map(each => each.type === 'checkbox' || each.type === 'radio' ? each.closest('label') : each)
              .filter(each => { const box = each.getBoundingClientRect(); return box.height > 0 && (box.height < 47.5 || box.width < 47.5); })
              .map(each => [each.getBoundingClientRect(), each.outerHTML.slice(0, 80)])
              .map(([box, html]) => `${Math.round(box.width)} x ${Math.round(box.height)}: ${html}`)
            """);
        Assert.True(small.Length == 0, string.Join(Environment.NewLine, small));
        int stops = 0;
        for (; !await page.EvaluateAsync<bool>("document.activeElement?.closest('.cautions') !== null && document.activeElement !== document.body");
            stops++)
        {
            Assert.True(stops < 150, "the end of the page is not reached");
            await page.Keyboard.PressAsync("Tab");
            Assert.Equal("", await KeyboardTests.WhyNotSeenAsync(page));
        }
        Assert.True(stops > 30, $"{stops} stops");
    }

    private static async Task LookAtErrorsAsync(IPage page, RunningKitchen kitchen, List<string> findings)
    {
        await page.GotoAsync(kitchen.Address + "/put-up");
        await page.GetByLabel("How much in each jar").FillAsync("-3 kg");
        await page.GetByText("More, if you like").ClickAsync();
        await page.GetByLabel("Another per cent of salt").FillAsync("225 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up" }).ClickAsync();
        await page.WaitForSelectorAsync(".wrong-box");
        await DrawAsync(page, "put-up-errors", findings);
    }

    /// <summary>A figure that is odd, and a form that was sent before with another answer.</summary>
    private static async Task LookAtQuestionsAsync(IPage page, RunningKitchen kitchen, List<string> findings)
    {
        await page.GotoAsync(kitchen.Address + "/put-up");
        await page.VegetableAsync("cucumber");
        await page.GetByLabel("How much in each jar").FillAsync("1.6 kg");
        await page.ChooseAsync("3 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }).ClickAsync();
        await page.WaitForSelectorAsync(".wrong-box");
        await DrawAsync(page, "put-up-odd", findings);

        await page.GotoAsync(kitchen.Address + "/jars/3/seen");
        string id = await page.Locator("input[name='Input.Id']").First.InputValueAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "An off smell" }).ClickAsync();
        await page.GotoAsync(kitchen.Address + "/jars/3/seen");
        await page.EvaluateAsync("id => document.querySelectorAll(\"input[name='Input.Id']\").forEach(each => each.value = id)", id);
        await page.GetByRole(AriaRole.Button, new() { Name = "Slime" }).ClickAsync();
        await page.WaitForSelectorAsync(".wrong-box");
        await DrawAsync(page, "seen-again", findings);
    }

    /// <summary>What a child sees, and a form that comes back after signing in.</summary>
    private async Task LookAtChildAsync(RunningKitchen kitchen, List<string> findings)
    {
        await using IBrowserContext child = await chromium.NewContextAsync();
        IPage page = await child.NewPageAsync();
        await page.GotoAsync(kitchen.Address + "/sign-in");
        await SignInAsync(page);
        await page.GotoAsync(kitchen.Address + "/?guide=Slime&jar=5");
        await DrawAsync(page, "today-child", findings);
        await page.GotoAsync(kitchen.Address + "/jars/5/seen");
        await page.GetByLabel("Something else").FillAsync("the lid is bent");
        await child.ClearCookiesAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter", Exact = true }).ClickAsync();
        await DrawAsync(page, "sign-in-kept", findings);
        await SignInAsync(page);
        await page.WaitForSelectorAsync("text=nothing is written down yet");
        await DrawAsync(page, "seen-kept", findings);
    }

    private static async Task SignInAsync(IPage page)
    {
        await page.GetByLabel("Name").FillAsync("Lena");
        await page.GetByLabel("Password").FillAsync(Walks.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.Locator("nav.rooms").WaitForAsync();
    }

    private static async Task LookAtAbsenceAsync(IPage page, RunningKitchen kitchen, List<string> findings)
    {
        await page.AskBeforeGoingAsync(kitchen, 1, 6);
        await page.GetByRole(AriaRole.Button, new() { Name = "Pause until" }).ClickAsync();
        await page.AskBeforeGoingAsync(kitchen, 1, 6);
        await DrawAsync(page, "before-you-go", findings);
        string link = await page.MakeGuestLinkAsync(kitchen, "Ben");
        await DrawAsync(page, "household-link", findings);
        await LookAsync(page, link, "guest", findings);
    }

    private static async Task LookAsync(IPage page, string address, string name, List<string> findings)
    {
        await page.GotoAsync(address);
        await DrawAsync(page, name, findings);
    }

    /// <summary>Draws what a page shows in each look, and adds what axe finds.</summary>
    /// <param name="page">The page.</param>
    /// <param name="name">Of the pictures.</param>
    /// <param name="findings">Gets what is found.</param>
    /// <param name="folder">Where the pictures go, if not beside those of every page.</param>
    internal static async Task DrawAsync(IPage page, string name, List<string> findings, string? folder = null)
    {
        foreach ((int width, ColorScheme scheme) in Looks)
        {
            // As high as the page, so that what keeps to the bottom of the window lies at the bottom of the picture.
            await page.SetViewportSizeAsync(width, 800);
            int height = await page.EvaluateAsync<int>("document.documentElement.scrollHeight");
            await page.SetViewportSizeAsync(width, Math.Max(800, height));
            await page.EmulateMediaAsync(new() { ColorScheme = scheme });
            // Asked by locators: what a page polls for by itself its content policy forbids.
            foreach (ILocator drawn in await page.Locator("[data-picture]").AllAsync())
                await drawn.Locator(".picture-read strong").First.WaitForAsync();
            string picture = $"{name}-{width}-{scheme.ToString().ToLowerInvariant()}";
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder ?? Folder, picture + ".png"), FullPage = true });
            await AskAxeAsync(page, picture, findings);
            if (await IsWiderAsync(page))
                findings.Add($"{picture}: wider than the screen");
        }
        await SqueezeAsync(page, name, findings);
    }

    private static AxeRunOptions Asking(params (string Rule, bool Enabled)[] rules) =>
        new() { Rules = rules.ToDictionary(each => each.Rule, each => new RuleOptions { Enabled = each.Enabled }) };

    /// <summary>What axe finds, text of less than 7 to 1 (4.5 where it is large; WCAG 2.2, 1.4.6, level AAA) among it.</summary>
    private static async Task AskAxeAsync(IPage page, string picture, List<string> findings)
    {
        bool own = await page.EvaluateAsync<bool>("matchMedia('(forced-colors: active)').matches");
        AxeResult result = await page.RunAxe(own ? ButColours : AlsoEnhanced);
        findings.AddRange(result.Violations.Select(violation =>
            $"{picture}: {violation.Id}: {violation.Help}: {string.Join("; ", violation.Nodes.Select(node => node.Html))}"));
    }

    /// <summary>The narrowest phone, and text of twice the size, as browsers make it: nothing is to be scrolled sideways.</summary>
    private static async Task SqueezeAsync(IPage page, string name, List<string> findings)
    {
        await page.SetViewportSizeAsync(320, 800);
        if (await IsWiderAsync(page))
            findings.Add($"{name}: wider than a phone of 320 px");
        await page.SetViewportSizeAsync(390, 844);
        await page.EvaluateAsync("document.documentElement.style.fontSize = '200%'");
        if (await IsWiderAsync(page))
            findings.Add($"{name}: wider than the screen with text of twice the size: {await WidestAsync(page)}");
        await page.EvaluateAsync("document.documentElement.style.fontSize = ''");
    }

    private static async Task<bool> IsWiderAsync(IPage page) =>
        await page.EvaluateAsync<int>("document.documentElement.scrollWidth - window.innerWidth") > 0;

    /// <summary>What reaches beyond the screen, the innermost.</summary>
    private static Task<string> WidestAsync(IPage page) => page.EvaluateAsync<string>("""
        () => [...document.querySelectorAll('main *, nav *')]
          .filter(each => each.getBoundingClientRect().right > innerWidth + 1 && !each.closest('.scroll'))
          .filter((each, _, all) => !all.some(other => other !== each && each.contains(other)))
          .slice(0, 3).map(each => each.outerHTML.slice(0, 120)).join(' | ')
        """);
}
