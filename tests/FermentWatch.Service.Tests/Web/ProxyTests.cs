using System.Net;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using FermentWatch.Web;

namespace FermentWatch.Service.Tests.Web;

/// <summary>What a proxy before the pages may say of who calls, and who may call the pages by which name and path.</summary>
public sealed class ProxyTests
{
    [Theory]
    [InlineData("127.0.0.0/8", true)]
    [InlineData("127.0.0.1, ::1", true)]
    [InlineData("192.0.2.0/24", false)]
    [InlineData("", false)]
    public async Task Forwarded_SchemeAndHost_AreBelievedOfTrustedProxiesOnly(string trusted, bool believed)
    {
        await using RunningKitchen kitchen =
            await RunningKitchen.StartAsync(("Web:TrustedProxies", trusted), ("Web:AllowedHosts", "kitchen.example.org"));
        using Script stranger = Script.Stranger(kitchen);
        HttpResponseMessage answer = await stranger.Http.SendAsync(Forwarded(HttpMethod.Get, "/jars"));
        Assert.Equal(believed ? "https://kitchen.example.org/sign-in?to=%2Fjars" : $"{kitchen.Address}/sign-in?to=%2Fjars",
            answer.Headers.Location!.ToString());
    }

    [Theory]
    [InlineData("127.0.0.1", true)]
    [InlineData("", false)]
    public async Task SignIn_ByTrustedProxyWithTls_GivesSecureCookiesOnly(string trusted, bool secure)
    {
        await using RunningKitchen kitchen =
            await RunningKitchen.StartAsync(("Web:TrustedProxies", trusted), ("Web:AllowedHosts", "kitchen.example.org"));
        using Script ada = await Script.SignedInAsync(kitchen);
        HttpRequestMessage signIn = Forwarded(HttpMethod.Post, "/api/v1/sign-in");
        signIn.Content = System.Net.Http.Json.JsonContent.Create(new { user = Script.User, password = Script.Password });
        using HttpClient fresh = new(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = new Uri(kitchen.Address) };
        HttpResponseMessage answer = await fresh.SendAsync(signIn);
        Assert.Equal(secure, answer.Headers.GetValues("Set-Cookie").All(cookie => cookie.Contains("; secure", StringComparison.OrdinalIgnoreCase)));
        HttpResponseMessage form = await fresh.SendAsync(Forwarded(HttpMethod.Get, "/sign-in"));
        Assert.Equal(secure, form.Headers.GetValues("Set-Cookie").All(cookie => cookie.Contains("; secure", StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public async Task Forwarded_Client_IsWhoIsSlowedDownForWrongPasswords()
    {
        await using RunningKitchen kitchen =
            await RunningKitchen.StartAsync(("Web:TrustedProxies", "127.0.0.1"), ("Web:AllowedHosts", "kitchen.example.org"));
        using Script ada = await Script.SignedInAsync(kitchen);
        for (int i = 0; i < 3; i++)
            await SignInAsync(ada, "192.0.2.7", "wrong guess 1");
        // The clock stands: whoever is made to wait is not answered.
        Task<HttpResponseMessage> slowed = SignInAsync(ada, "192.0.2.7", Script.Password);
        Assert.Equal(HttpStatusCode.NoContent, (await SignInAsync(ada, "192.0.2.8", Script.Password)).StatusCode);
        Assert.False(slowed.IsCompleted);
        kitchen.Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(HttpStatusCode.NoContent, (await slowed).StatusCode);
    }

    [Theory]
    [InlineData("127.0.0.1", true)]
    [InlineData("192.168.1.20:8340", true)]
    [InlineData("[fd00::20]:8340", true)]
    [InlineData("kitchen", true)]
    [InlineData("kitchen.local", true)]
    [InlineData("kitchen.home.arpa", true)]
    [InlineData("kitchen.example.org", true)]
    [InlineData("jars.example.net", true)]
    [InlineData("a.jars.example.com", true)]
    [InlineData("jars.example.com", false)]
    [InlineData("elsewhere.example.org", false)]
    [InlineData("kitchen.local.example.org", false)]
    public async Task Host_NamesOfTheHouseholdAndOfTheSettings_AreAnsweredAndNoOther(string host, bool answered)
    {
        await using RunningKitchen kitchen =
            await RunningKitchen.StartAsync(("Web:PublicAddress", "https://kitchen.example.org"),
            ("Web:AllowedHosts", "jars.example.net, *.jars.example.com"));
        using Script stranger = Script.Stranger(kitchen);
        HttpResponseMessage answer =
            await stranger.Http.SendAsync(new HttpRequestMessage(HttpMethod.Get, "/healthz/live") { Headers = { Host = host } });
        Assert.Equal(answered ? HttpStatusCode.OK : HttpStatusCode.BadRequest, answer.StatusCode);
        if (!answered)
            Assert.Contains("Web:AllowedHosts", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/kitchen")]
    [InlineData("")]
    public async Task PathBase_LeftOnOrTakenOffByTheProxy_StandsInLinksFormsRedirectsAndCookies(string left)
    {
        await using RunningKitchen kitchen =
            await RunningKitchen.StartAsync(("Web:PathBase", "kitchen/"), ("Web:PublicAddress", "https://home.example.org"));
        using Script ada = await Script.SignedInAsync(kitchen);
        using Script stranger = Script.Stranger(kitchen);
        Assert.Equal("/kitchen/sign-in", (await stranger.Http.GetAsync($"{left}/jars")).Headers.Location!.AbsolutePath);
        HttpResponseMessage signIn = await stranger.PostAsync($"{left}/api/v1/sign-in", new { user = Script.User, password = Script.Password });
        string cookie = signIn.Headers.GetValues("Set-Cookie").Single(each => each.StartsWith("fermentwatch=", StringComparison.Ordinal));
        Assert.Contains("path=/kitchen", cookie, StringComparison.Ordinal);

        using HttpClient browser =
            new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = new Uri(kitchen.Address) };
        browser.DefaultRequestHeaders.Add("Cookie", cookie.Split(';')[0]);
        browser.DefaultRequestHeaders.Add("X-FermentWatch", "test");
        string page = await browser.GetStringAsync($"{left}/household");
        Assert.Contains("<base href=\"/kitchen/\"", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("(href|src|action)=\"/(?!kitchen/)", page);
        HttpResponseMessage renewed = await browser.PostAsync($"{left}/api/v1/calendar", null);
        Assert.Contains("\"/kitchen/calendar/", await renewed.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        HttpResponseMessage put = await System.Net.Http.Json.HttpClientJsonExtensions.PostAsJsonAsync(browser, $"{left}/api/v1/jars",
            new { what = "cabbage", how_much = "900g", salt = "2.25%", vessel = "1l", place = "kitchen counter" });
        Assert.StartsWith("/kitchen/api/v1/jars/", put.Headers.Location!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Errors_WrongProxyHostAndPath_SayWhatBelongsThere() => Assert.Equal(
        [
            "TrustedProxies holds 'nginx'; an address or a network belongs there, like 127.0.0.1 or 192.168.1.0/24.",
            "AllowedHosts holds 'https://kitchen.example.org'; a name without scheme and port belongs there, like kitchen.example.org, "
            + "*.example.org, or * for every name.",
            "PathBase is '/a b'; a path of letters, digits, '-', '_', '.' and '/' belongs here, like /kitchen.",
        ], new WebOptions { TrustedProxies = "nginx, 10.0.0.1", AllowedHosts = "https://kitchen.example.org,*.example.org",
        PathBase = "/a b" }.Errors());

    private static Task<HttpResponseMessage> SignInAsync(Script script, string from, string password)
    {
        HttpRequestMessage signIn = Forwarded(HttpMethod.Post, "/api/v1/sign-in");
        signIn.Headers.Remove("X-Forwarded-For");
        signIn.Headers.Add("X-Forwarded-For", from);
        signIn.Content = System.Net.Http.Json.JsonContent.Create(new { user = Script.User, password });
        return script.Http.SendAsync(signIn);
    }

    private static HttpRequestMessage Forwarded(HttpMethod method, string path) => new(method, path)
    {
        Headers = { { "X-Forwarded-Proto", "https" }, { "X-Forwarded-Host", "kitchen.example.org" }, { "X-Forwarded-For", "192.0.2.7" } },
    };
}
