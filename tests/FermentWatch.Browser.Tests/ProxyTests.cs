using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>The documented way to HTTPS, in a browser: nginx with a certificate before the pages, at the root and under a sub-path.</summary>
public sealed class ProxyTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Theory]
    [InlineData("")]
    [InlineData("/kitchen")]
    public async Task BehindNginx_SetUpSignOutSignInPutUp_WorksAndCookiesAreSecure(string subPath)
    {
        using var nginx = new Nginx();
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(
            ("Web:TrustedProxies", "127.0.0.1"), ("Web:PublicAddress", nginx.Address), ("Web:PathBase", subPath));
        await nginx.StartAsync(kitchen.Address, subPath);
        string root = nginx.Address + subPath;
        await using IBrowserContext context = await chromium.NewContextAsync(new() { IgnoreHTTPSErrors = true });
        IPage page = await context.NewPageAsync();
        var broken = new List<string>();
        page.Response += (_, answer) =>
        {
            if (answer.Status >= 400)
                broken.Add($"{answer.Status} {answer.Url}");
        };

        await page.GotoAsync((await kitchen.SetUpAddressAsync()).Replace(kitchen.Address, root, StringComparison.Ordinal));
        await page.GetByLabel("Your name").FillAsync(Walks.User);
        await page.GetByLabel("Password").FillAsync(Walks.Password);
        await page.GetByLabel("The same again").FillAsync(Walks.Password);
        await page.GetByLabel("Name of the kitchen").FillAsync("Number Nine");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set up" }).ClickAsync();
        await page.ArriveAsync(root + "/");

        await page.GetByRole(AriaRole.Link, new() { Name = "House" }).ClickAsync();
        await page.ArriveAsync(root + "/household");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.ArriveAsync(root + "/sign-in");
        await page.GotoAsync(root + "/put-up");
        await page.GetByLabel("Name").FillAsync(Walks.User);
        await page.GetByLabel("Password").FillAsync(Walks.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.ArriveAsync(root + "/put-up");

        await page.VegetableAsync("cabbage");
        await page.GetByLabel("How much in each jar").FillAsync("900 g");
        await page.ChooseAsync("By taste");
        await page.GetByLabel("Where it stands").SelectOptionAsync("kitchen counter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put up" }).ClickAsync();
        await page.ArriveAsync(root + "/jars/1?new=1");
        Assert.Equal("Cabbage", await page.InnerTextAsync("main h1"));
        Assert.NotEqual("serif", await page.EvaluateAsync<string>("getComputedStyle(document.body).fontFamily.split(',').pop().trim()"));
        Assert.Empty(broken);

        IReadOnlyList<BrowserContextCookiesResult> cookies = await context.CookiesAsync();
        Assert.Equal(["fermentwatch", "fermentwatch-form"], cookies.Select(cookie => cookie.Name).Order());
        Assert.All(cookies, cookie => Assert.True(cookie.Secure && cookie.HttpOnly));
        Assert.All(cookies, cookie => Assert.Equal(subPath.Length > 0 ? subPath : "/", cookie.Path));
    }
}
