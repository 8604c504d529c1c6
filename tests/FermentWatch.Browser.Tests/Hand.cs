using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>A hand at a phone, whose taps and keys are counted: a field is tapped before it is typed in, a list twice.</summary>
internal sealed class Hand(IPage page) : IAsyncDisposable
{
    /// <summary>What signing in takes, besides the letters of name and password, which are not counted.</summary>
    public const int SignInTaps = 3;

    private static readonly string Pictures = Path.Combine(AppContext.BaseDirectory, "pictures-flows");

    public IPage Page => page;

    public int Taps { get; private set; }

    public int Keys { get; private set; }

    /// <summary>A household as it stands, and a phone of it from signed out to its first page.</summary>
    public static async Task<Hand> SignInAsync(Chromium chromium, RunningKitchen kitchen, bool script, Func<IPage, Task>? prepare = null)
    {
        await using (IBrowserContext owner = await chromium.NewContextAsync())
        {
            IPage setUp = await owner.NewPageAsync();
            await setUp.SetUpAsync(kitchen);
            if (prepare is not null)
                await prepare(setUp);
        }
        IBrowserContext phone = await chromium.NewContextAsync(
            new() { JavaScriptEnabled = script, ViewportSize = new() { Width = 390, Height = 844 }, HasTouch = true });
        var hand = new Hand(await phone.NewPageAsync());
        await hand.Page.GotoAsync(kitchen.Address + "/");
        await hand.TypeAsync(hand.Page.GetByLabel("Name"), Walks.User);
        await hand.TypeAsync(hand.Page.GetByLabel("Password"), Walks.Password);
        await hand.TapAsync(hand.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }));
        await hand.Page.Locator("nav.rooms").WaitForAsync();
        hand.Keys = 0;
        return hand;
    }

    /// <summary>A place in the bar of pages.</summary>
    public static ILocator Bar(IPage page, string name) => page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new() { Name = name });

    /// <summary>By the list of jars to one of them.</summary>
    public async Task ToJarAsync(int number)
    {
        await TapAsync(Bar(page, "Jars"));
        await TapAsync(page.Locator($"a.jar-row[href='jars/{number}']"));
    }

    public async Task TapAsync(ILocator target)
    {
        Taps++;
        await target.TapAsync();
    }

    public Task TapLinkAsync(string name) => TapAsync(page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true }));

    public Task TapButtonAsync(string name) => TapAsync(page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }));

    public async Task TypeAsync(ILocator field, string text)
    {
        await TapAsync(field);
        Keys += text.Length;
        await field.SelectTextAsync();
        await page.Keyboard.TypeAsync(text);
    }

    public async Task ChooseAsync(ILocator list, string option)
    {
        Taps += 2;
        await list.SelectOptionAsync(option);
    }

    public async Task ChooseAsync(ILocator list, Regex option)
    {
        string value = (await list.Locator("option", new() { HasTextRegex = option }).First.GetAttributeAsync("value"))!;
        await ChooseAsync(list, value);
    }

    /// <summary>A picture of the page as it stands, to be looked at.</summary>
    public Task PictureAsync(string name) =>
        page.ScreenshotAsync(new() { Path = Path.Combine(Pictures, $"{name}.png"), FullPage = true });

    public async ValueTask DisposeAsync() => await page.Context.DisposeAsync();
}
