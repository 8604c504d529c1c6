using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Notices.Tests.WebPush;
using FermentWatch.RunningTests;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Service.Tests.Api;

/// <summary>A browser that has itself told by web push, and what comes to it.</summary>
public sealed class PhoneApiTests : IAsyncLifetime, IDisposable
{
    private const string Routes = "/api/v1/notice-routes", Phones = Routes + "/web-push";

    private readonly PushBrowser _browser = new();
    private PushService _service = null!;
    private RunningKitchen _kitchen = null!;
    private Script _ada = null!;

    public async Task InitializeAsync()
    {
        _service = await PushService.StartAsync();
        _kitchen = await RunningKitchen.StartAsync(("Web:PublicAddress", "https://kitchen.example.org"));
        _ada = await Script.SignedInAsync(_kitchen);
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        await _kitchen.DisposeAsync();
        await _service.DisposeAsync();
    }

    public void Dispose() => _browser.Dispose();

    [Fact]
    public async Task Add_Browser_IsOfWhoIsSignedInAndItsAddressAndKeysAreNeverShown()
    {
        HttpResponseMessage answer = await _ada.PostAsync(Phones, Subscription());
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        JsonElement route = Assert.Single((await _ada.GetAsync(Routes)).EnumerateArray());
        Assert.Equal(
            ("Ada", "WebPush", _service.Origin, false),
            (route.GetProperty("person").GetString(), route.GetProperty("channel").GetString(), route.GetProperty("address").GetString(),
            route.GetProperty("has_secret").GetBoolean()));
        string everything = await answer.Content.ReadAsStringAsync() + route.GetRawText() + await _ada.Http.GetStringAsync("/notices");
        foreach (string secret in new[] { _browser.P256dh, _browser.Auth, _service.Endpoint })
            Assert.DoesNotContain(secret, everything, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Add_SameBrowserAgain_IsThereOnceAndMovesToWhoTakesItOver()
    {
        HttpResponseMessage[] answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => _ada.PostAsync(Phones, Subscription())));
        Assert.Single(answers, answer => answer.StatusCode == HttpStatusCode.Created);
        Assert.Equal(5, answers.Count(answer => answer.StatusCode == HttpStatusCode.OK));
        Assert.Equal(1, (await _ada.GetAsync(Routes)).GetArrayLength());

        using Script mira = await Script.SignedInAsync(_kitchen, "mira", "Mira");
        Assert.Equal(HttpStatusCode.Created, (await mira.PostAsync(Phones, Subscription())).StatusCode);
        Assert.Equal(["Mira"], (await _ada.GetAsync(Routes)).EnumerateArray().Select(route => route.GetProperty("person").GetString()));
    }

    [Theory]
    [InlineData("endpoint", "http://push.example.net/p/1")]
    [InlineData("endpoint", "the kitchen table")]
    [InlineData("endpoint", null)]
    [InlineData("p256dh", "BCVxsr7N_eNgVRqvHtD0")]
    [InlineData("p256dh", "BAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("p256dh", "not base64url!")]
    [InlineData("p256dh", null)]
    [InlineData("auth", "BTBZMqHH6r4Tts7J_aSI")]
    [InlineData("auth", null)]
    public async Task Add_FieldThatCannotBe_IsRefusedWithWhatWouldBeRight(string field, string? value)
    {
        Dictionary<string, string?> subscription = Subscription();
        subscription[field] = value;
        HttpResponseMessage answer = await _ada.PostAsync(Phones, subscription);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        JsonElement refusal = Assert.Single((await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("refusals").EnumerateArray());
        Assert.Equal(field, refusal.GetProperty("field").GetString());
        Assert.EndsWith("would be right", refusal.GetProperty("would_be_right").GetString(), StringComparison.Ordinal);
        Assert.Equal(0, (await _ada.GetAsync(Routes)).GetArrayLength());
    }

    [Fact]
    public async Task Add_AnotherPersonsName_IsNotTaken()
    {
        Dictionary<string, string?> subscription = Subscription();
        subscription["person"] = "Mira";
        Assert.Equal(HttpStatusCode.BadRequest, (await _ada.PostAsync(Phones, subscription)).StatusCode);
    }

    [Fact]
    public async Task Add_StrangerOrChild_OnlyOnesOwnPhone()
    {
        using Script stranger = Script.Stranger(_kitchen);
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.PostAsync(Phones, Subscription())).StatusCode);
        using Script lena = await Script.ChildAsync(_kitchen);
        Assert.Equal(HttpStatusCode.Created, (await lena.PostAsync(Phones, Subscription())).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden,
            (await lena.PostAsync(Routes, new { person = "Ada", channel = "Webhook", address = "http://127.0.0.1:9/" })).StatusCode);
    }

    [Fact]
    public async Task Add_ByTheFormOfTheOthers_SaysThatOnlyTheBrowserItselfCan()
    {
        HttpResponseMessage answer = await _ada.PostAsync(Routes, new { person = "Ada", channel = "WebPush", address = _service.Endpoint });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        JsonElement refusal = Assert.Single((await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("refusals").EnumerateArray());
        Assert.Equal(
            ("channel", "only the browser that is to be told can add itself: press “Send notices to this phone” on its notices page"),
            (refusal.GetProperty("field").GetString(), refusal.GetProperty("would_be_right").GetString()));
    }

    [Fact]
    public async Task Add_PagesWithoutHttps_IsRefusedWithTheSettingAndNotOffered()
    {
        await using RunningKitchen plain = await RunningKitchen.StartAsync(("Web:PublicAddress", "http://kitchen.local:8340"));
        using Script ada = await Script.SignedInAsync(plain);
        HttpResponseMessage answer = await ada.PostAsync(Phones, Subscription());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("Web:PublicAddress", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        string page = await ada.Http.GetStringAsync("/notices");
        Assert.Contains("No web push yet. Browsers take notices only from pages they reach by HTTPS", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Round_ByPush_IsReadByTheBrowserAndAnsweredOnceWithoutSignIn()
    {
        await _ada.PostAsync(Phones, Subscription());
        await MorningAsync();
        PushRequest got = Assert.Single(_service.Got);
        JsonElement message = JsonDocument.Parse(_browser.Decrypt(got.Body)).RootElement;
        Notice round = Assert.Single(await Book.LatestAsync(10, default));
        Assert.Equal(
            (round.Key, round.Title, round.Body, NoticeState.Delivered),
            (message.GetProperty("key").GetString(), message.GetProperty("title").GetString(), message.GetProperty("text").GetString(), round.State));

        using Script phone = Script.Stranger(_kitchen);
        string answers = message.GetProperty("answer").GetString()!.Replace("/answer/", "/api/v1/answers/", StringComparison.Ordinal);
        Assert.Equal((1, 0), (await FiledAsync(phone, answers), await FiledAsync(phone, answers)));
        Assert.Equal(["Ada"], (await LooksAsync()).Select(look => look.By));
    }

    [Fact]
    public async Task Round_BrowserThatIsGone_IsRefusedAndThePageSaysWhatToDo()
    {
        await _ada.PostAsync(Phones, Subscription());
        _service.Answer = (_, context) =>
        {
            context.Response.StatusCode = StatusCodes.Status410Gone;
            return Task.CompletedTask;
        };
        await MorningAsync();
        Assert.Equal(NoticeState.Refused, Assert.Single(await Book.LatestAsync(10, default)).State);
        Assert.Contains(
            "refused by the receiver. This browser takes no notices any more (410): remove this way", await _ada.Http.GetStringAsync("/notices"),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Test_ToABrowser_ArrivesAndAsksNothing()
    {
        string id = (await (await _ada.PostAsync(Phones, Subscription())).Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;
        HttpResponseMessage answer = await _ada.PostAsync($"{Routes}/{id}/test", new { });
        Assert.Equal("Delivered", (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("result").GetString());
        JsonElement message = JsonDocument.Parse(_browser.Decrypt(Assert.Single(_service.Got).Body)).RootElement;
        Assert.Equal(("A test", false), (message.GetProperty("title").GetString(), message.TryGetProperty("answer", out _)));
    }

    [Fact]
    public async Task KeyPair_AfterARestart_IsTheSameAndSignsOn()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-push-");
        (string, string)[] settings = [("Web:PublicAddress", "https://kitchen.example.org"), ("Storage:Folder", folder.FullName)];
        string key;
        await using (RunningKitchen first = await RunningKitchen.StartAsync(settings))
        {
            using Script ada = await Script.SignedInAsync(first);
            await ada.PostAsync(Phones, Subscription());
            key = KeyIn(await ada.Http.GetStringAsync("/notices"));
        }

        await using (RunningKitchen second = await RunningKitchen.StartAsync(settings))
        {
            using Script mira = await Script.SignedInAsync(second, "mira", "Mira");
            string id = Assert.Single((await mira.GetAsync(Routes)).EnumerateArray()).GetProperty("id").GetString()!;
            await mira.PostAsync($"{Routes}/{id}/test", new { });
            Assert.Equal(key, KeyIn(await mira.Http.GetStringAsync("/notices")));
        }

        Assert.EndsWith($"k={key}", Assert.Single(_service.Got).Headers["Authorization"], StringComparison.Ordinal);
        folder.Delete(recursive: true);
    }

    private INoticeBook Book => _kitchen.Services.GetRequiredService<INoticeBook>();

    private Dictionary<string, string?> Subscription() =>
        new() { ["endpoint"] = _service.Endpoint, ["p256dh"] = _browser.P256dh, ["auth"] = _browser.Auth };

    /// <summary>A jar, and the next round at seven.</summary>
    private async Task MorningAsync()
    {
        await _ada.PutUpAsync();
        _kitchen.Clock.SetUtcNow((_kitchen.Now.InUtc().Date.PlusDays(1) + new LocalTime(7, 0)).InUtc().ToDateTimeOffset());
        await _kitchen.SettleAsync();
    }

    private async Task<IEnumerable<Look>> LooksAsync() =>
        (await _kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(default)).SelectMany(jar => jar.Standing.OfType<Look>());

    private static async Task<int> FiledAsync(Script phone, string path) =>
        (await (await phone.PostAsync(path, new { opened = false })).Content.ReadFromJsonAsync<JsonElement>()).GetProperty("filed").GetInt32();

    private static string KeyIn(string page)
    {
        int at = page.IndexOf("data-key=\"", StringComparison.Ordinal) + "data-key=\"".Length;
        return page[at..page.IndexOf('"', at)];
    }
}
