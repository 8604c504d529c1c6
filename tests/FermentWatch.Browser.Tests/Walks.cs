using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>What people do on the pages, step by step.</summary>
internal static class Walks
{
    public const string User = "Ada", Password = "four wet cabbages";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3), Look = TimeSpan.FromMilliseconds(20);

    /// <summary>The owner sets up the kitchen and stands on the first page.</summary>
    public static async Task SetUpAsync(this IPage page, RunningKitchen kitchen, string zone = "Europe/Vienna", bool pounds = false)
    {
        await page.GotoAsync(await kitchen.SetUpAddressAsync());
        await page.GetByLabel("Your name").FillAsync(User);
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByLabel("The same again").FillAsync(Password);
        await page.GetByLabel("Name of the kitchen").FillAsync("Number Nine");
        await page.GetByLabel("Time zone").SelectOptionAsync(zone);
        if (pounds)
        {
            await page.ChooseAsync("Fahrenheit");
            await page.ChooseAsync("pounds, quarts");
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "Set up" }).ClickAsync();
        await page.ArriveAsync(kitchen.Address + "/");
    }

    /// <summary>Puts up jars and stands on the page that follows.</summary>
    public static async Task PutUpAsync(this IPage page, RunningKitchen kitchen, string what, string howMuch, string salt, string place,
        int howMany = 1, double daysAgo = 0, string? sour = null)
    {
        await page.GotoAsync(kitchen.Address + "/put-up");
        await page.VegetableAsync(what);
        await page.GetByLabel("How much in each jar").FillAsync(howMuch);
        await page.ChooseAsync(salt);
        await page.GetByLabel("Where it stands").SelectOptionAsync(place);
        await page.GetByLabel("How many alike").FillAsync($"{howMany}");
        if (sour is not null)
            await page.GetByLabel("How sour").SelectOptionAsync(sour);
        if (daysAgo > 0)
        {
            await page.GetByText("More, if you like").ClickAsync();
            NodaTime.Instant packed = kitchen.Now - NodaTime.Duration.FromDays(daysAgo);
            await page.GetByLabel("Packed", new() { Exact = true })
                .FillAsync(packed.InZone(NodaTime.DateTimeZoneProviders.Tzdb["Europe/Vienna"]).ToString("uuuu-MM-dd'T'HH:mm", null));
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up" }).ClickAsync();
        await page.UntilAtAsync(address => !address.EndsWith("/put-up", StringComparison.Ordinal));
        await page.Locator("main h1").First.WaitForAsync();
    }

    /// <summary>Says which vegetable on the put-up page: one that is drawn, or one of the list beside the drawings.</summary>
    public static async Task VegetableAsync(this IPage page, string what)
    {
        ILocator drawn = page.Locator($"input[name='Input.What'][value='{what}']");
        if (await drawn.CountAsync() > 0)
            await drawn.CheckAsync();
        else
            await page.GetByLabel("Another vegetable").SelectOptionAsync(what);
    }

    /// <summary>Enters a pH and stands on the jar's page.</summary>
    public static async Task MeasureAsync(this IPage page, RunningKitchen kitchen, int jar, string ph, string method, bool check = false)
    {
        await page.GotoAsync($"{kitchen.Address}/jars/{jar}/ph");
        await page.GetByLabel("pH", new() { Exact = true }).FillAsync(ph);
        await page.ChooseAsync(method);
        if (method == "Strip")
            await page.ChooseAsync(check ? "Pale brine" : "Dark brine");
        else if (check)
            await page.GetByLabel("Meter or probe checked in buffer that day").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, jar);
    }

    /// <summary>Waits for a jar's page that answers an entry.</summary>
    public static async Task ArriveAnsweredAsync(this IPage page, RunningKitchen kitchen, int jar)
    {
        await page.UntilAtAsync(address => address.StartsWith($"{kitchen.Address}/jars/{jar}?", StringComparison.Ordinal));
        await page.Locator("main h1").First.WaitForAsync();
    }

    /// <summary>
    /// Waits for an address. Where it has been reached already, the browser's own waiting asks for an event of loading that may never come
    /// again.
    /// </summary>
    /// <exception cref="TimeoutException">It was not reached within three minutes.</exception>
    public static async Task UntilAtAsync(this IPage page, Func<string, bool> isThere)
    {
        long start = TimeProvider.System.GetTimestamp();
        while (!isThere(page.Url))
        {
            if (TimeProvider.System.GetElapsedTime(start) > Patience)
                throw new TimeoutException($"Still at {page.Url}.");
            await Task.Delay(Look, TimeProvider.System);
        }
    }

    /// <summary>Waits until the page of an address is there.</summary>
    public static async Task ArriveAsync(this IPage page, string address)
    {
        await page.UntilAtAsync(now => now == address);
        await page.Locator("main h1").First.WaitForAsync();
    }

    /// <summary>Adds a way to reach somebody.</summary>
    public static async Task ReachAsync(this IPage page, RunningKitchen kitchen, string person, string channel, string address)
    {
        await page.GotoAsync($"{kitchen.Address}/notices");
        await page.GetByLabel("Who").FillAsync(person);
        await page.ChooseAsync(channel);
        await page.GetByLabel("Address or topic").FillAsync(address);
        await page.GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).ClickAsync();
    }

    /// <summary>Makes a link for somebody who looks in.</summary>
    public static async Task<string> MakeGuestLinkAsync(this IPage page, RunningKitchen kitchen, string name)
    {
        await page.GotoAsync(kitchen.Address + "/household");
        await page.GetByText("Make a link").ClickAsync();
        await page.GetByLabel("Who looks in").FillAsync(name);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the link" }).ClickAsync();
        return await page.InnerTextAsync(".done code");
    }

    /// <summary>Adds somebody who may sign in with the same password.</summary>
    public static async Task AddMemberAsync(this IPage page, RunningKitchen kitchen, string name, bool child)
    {
        await page.GotoAsync(kitchen.Address + "/household");
        await page.GetByText("Add somebody who may sign in").ClickAsync();
        await page.GetByLabel("Name to sign in with").FillAsync(name);
        await page.ChooseAsync(child ? "a child" : "an adult");
        await page.GetByLabel("Password").FillAsync(Password);
        await page.Locator("form", new() { HasText = "Name to sign in with" }).GetByRole(AriaRole.Button, new() { Name = "Add" }).ClickAsync();
    }

    /// <summary>Asks what jars need in days away, counted from today.</summary>
    public static Task AskBeforeGoingAsync(this IPage page, RunningKitchen kitchen, int from, int until)
    {
        NodaTime.LocalDate today = kitchen.Now.InZone(NodaTime.DateTimeZoneProviders.Tzdb["Europe/Vienna"]).Date;
        return page.GotoAsync($"{kitchen.Address}/before-you-go?from={today.PlusDays(from):uuuu-MM-dd}&until={today.PlusDays(until):uuuu-MM-dd}");
    }

    /// <summary>All that a page says, also what lies folded, in one line.</summary>
    public static async Task<string> WholeTextAsync(this IPage page, string within = "main") =>
        Regex.Replace(await page.TextContentAsync(within) ?? "", @"\s+", " ");

    /// <summary>One tap on one of a few.</summary>
    public static Task ChooseAsync(this IPage page, string choice) =>
        page.GetByRole(AriaRole.Radio, new() { Name = choice, Exact = true }).CheckAsync();
}
