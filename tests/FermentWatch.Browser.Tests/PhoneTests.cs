using System.Text.Json;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Notices.Tests.WebPush;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace FermentWatch.Browser.Tests;

/// <summary>Notices on this phone: offered, subscribed to, shown and answered. The push service is one on loopback; the browser is a real
/// one.</summary>
public sealed class PhoneTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const string Button = "Send notices to this phone";

    [Fact]
    public async Task Notices_WithoutScript_HasNoDeadButtonAndTheRestWorks()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await OpenAsync(context, kitchen);
        Assert.False(await page.GetByText(Button).IsVisibleAsync());
        Assert.False(await page.Locator("#phone").IsVisibleAsync());
        await page.ReachAsync(kitchen, "Mira", "Webhook", "http://127.0.0.1:9/push");
        Assert.Contains("Added.", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal(0, await page.GetByRole(AriaRole.Radio, new() { Name = "Web push" }).CountAsync());
    }

    [Fact]
    public async Task Notices_BrowserThatMayNotShowThem_SaysSoInPlaceOfTheButton()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        await context.AddInitScriptAsync("Object.defineProperty(Notification, 'permission', { get: () => 'denied' })");
        IPage page = await OpenAsync(context, kitchen);
        await page.GetByText("This browser does not let this kitchen show notices.").WaitForAsync();
        Assert.False(await page.GetByText(Button).IsVisibleAsync());
    }

    [Fact]
    public async Task Notices_BrowserThatCannotTakePush_ShowsNothingOfIt()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        await context.AddInitScriptAsync("delete window.PushManager");
        IPage page = await OpenAsync(context, kitchen);
        await page.WaitForLoadStateAsync(LoadState.Load);
        Assert.False(await page.Locator("#phone").IsVisibleAsync());
    }

    [Fact]
    public async Task Notices_PushServiceThatCannotBeReached_SaysWhatTheBrowserSays()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await ContextAsync(kitchen);
        await context.AddInitScriptAsync("PushManager.prototype.subscribe = async () => { throw new Error('no push service here'); }");
        IPage page = await OpenAsync(context, kitchen);
        await page.GetByRole(AriaRole.Button, new() { Name = Button }).ClickAsync();
        await page.GetByText("It did not work. The browser says: no push service here").WaitForAsync();
        Assert.True(await page.GetByRole(AriaRole.Button, new() { Name = Button }).IsEnabledAsync());
    }

    [Fact]
    public async Task Phone_Subscribed_ShowsATestByItsRealWorkerAndARepeatReplacesIt()
    {
        await using PushService service = await PushService.StartAsync();
        using var keys = new PushBrowser();
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await ContextAsync(kitchen);
        IPage page = await SubscribedAsync(context, kitchen, service, keys);
        await page.GetByRole(AriaRole.Button, new() { Name = "Send a test to Ada" }).ClickAsync();
        await page.GetByText("The test was taken by the receiver.").WaitForAsync();
        string message = keys.Decrypt(service.Got.Single().Body);

        await DeliverAsync(context, page, kitchen, message);
        JsonElement shown = await NotificationsAsync(page, "A test");
        Assert.Equal(
            ("This is how a morning round will come. Nothing is to be done.", "open"),
            (shown[0].GetProperty("body").GetString(), shown[0].GetProperty("actions").GetString()));
        Assert.Equal(JsonDocument.Parse(message).RootElement.GetProperty("key").GetString(), shown[0].GetProperty("tag").GetString());
        await DeliverAsync(context, page, kitchen, message.Replace("A test", "A test again", StringComparison.Ordinal));
        Assert.Equal(1, (await NotificationsAsync(page, "A test again")).GetArrayLength());
    }

    [Fact]
    public async Task Worker_AllWellPressedTwice_AnswersOnceAndSaysSoInItsPlace()
    {
        await using Morning morning = await MorningAsync();
        JsonElement done = await morning.PressAsync("all-well", presses: 2);
        Assert.Equal(["all-well,later", "open", "open"], Each(done, "actions"));
        Assert.Equal(["Written down", "Written down"], Each(done, "title").Skip(1));
        Assert.Equal(["All well, by looking through the glass.", "Every jar was answered for already."], Each(done, "body").Skip(1));
        Assert.Single(Each(done, "tag").Distinct());
        Assert.Equal([("Ada", false)], (await morning.LooksAsync()).Select(look => (look.By, look.Opened)));
    }

    [Fact]
    public async Task Worker_LaterPressed_AsksAgainInTwoHoursAndAnswersForNobody()
    {
        await using Morning morning = await MorningAsync();
        JsonElement done = await morning.PressAsync("later");
        Assert.Equal(("Later", "Asked again in two hours."), (Each(done, "title").Last(), Each(done, "body").Last()));
        Assert.Empty(await morning.LooksAsync());
    }

    [Fact]
    public async Task Worker_KitchenOutOfReach_SaysSoAndATapLeadsToTheAnswersPage()
    {
        await using Morning morning = await MorningAsync();
        await morning.Context.SetOfflineAsync(true);
        JsonElement done = await morning.PressAsync("all-well");
        Assert.Equal(("Not written down", "The kitchen could not be reached. Open it when you are back in its network."),
            (Each(done, "title").Last(), Each(done, "body").Last()));
        Assert.StartsWith("/answer/", Each(done, "answer").Last(), StringComparison.Ordinal);
        Assert.Empty(await morning.LooksAsync());
    }

    [Fact]
    public async Task Worker_AllWellOnTheNextDay_SaysThatTheDayIsOver()
    {
        await using Morning morning = await MorningAsync();
        morning.Kitchen.Clock.Advance(TimeSpan.FromHours(18));
        Assert.Equal("The day this asked about is over.", Each(await morning.PressAsync("all-well"), "body").Last());
        Assert.Empty(await morning.LooksAsync());
    }

    [Theory]
    [InlineData("open", 2, "/")]
    [InlineData("", 2, "/")]
    [InlineData("open", 0, "/")]
    [InlineData("", 0, "/answer/")]
    public async Task Worker_Tapped_OpensTodayOrWherePhonesShowNoButtonsTheAnswersPage(string action, int buttons, string opens)
    {
        await using Morning morning = await MorningAsync();
        JsonElement done = await morning.PressAsync(action, buttons: buttons);
        string opened = done.GetProperty("opened")[0].GetString()!;
        Assert.Equal(opens, opened[..Math.Min(opened.Length, opens.Length)]);
        Assert.Equal(opens == "/", opened == "/");
        Assert.Empty(await morning.LooksAsync());
    }

    private static Task<RunningKitchen> StartAsync() => RunningKitchen.StartAsync(("Web:PublicAddress", "https://kitchen.example.org"));

    private static async Task<IPage> OpenAsync(IBrowserContext context, RunningKitchen kitchen)
    {
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.GotoAsync(kitchen.Address + "/notices");
        return page;
    }

    /// <summary>A browser that may show notices of this kitchen.</summary>
    private async Task<IBrowserContext> ContextAsync(RunningKitchen kitchen)
    {
        IBrowserContext context = await chromium.NewContextAsync();
        await context.GrantPermissionsAsync(["notifications"], new() { Origin = kitchen.Address });
        return context;
    }

    /// <summary>The owner has pressed the button. What the browser would get from its maker's push service it gets from ours.</summary>
    private static async Task<IPage> SubscribedAsync(IBrowserContext context, RunningKitchen kitchen, PushService service, PushBrowser keys)
    {
        await context.AddInitScriptAsync($$"""
            const bytes = text => Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), letter => letter.charCodeAt(0)).buffer;
            PushManager.prototype.getSubscription = async () => null;
            PushManager.prototype.subscribe = async options => {
              if (!options.userVisibleOnly || options.applicationServerKey.length !== 65 || options.applicationServerKey[0] !== 4)
                throw new Error('not a key');
              return { endpoint: '{{service.Endpoint}}', options, getKey: name => bytes({ p256dh: '{{keys.P256dh}}', auth: '{{keys.Auth}}' }[name]) };
            };
            """);
        IPage page = await OpenAsync(context, kitchen);
        await page.GetByRole(AriaRole.Button, new() { Name = Button }).ClickAsync();
        await page.GetByText("This phone is told from now on.").WaitForAsync();
        return page;
    }

    /// <summary>Hands a message to the worker as the browser does when its push service brings one.</summary>
    private static async Task DeliverAsync(IBrowserContext context, IPage page, RunningKitchen kitchen, string message)
    {
        ICDPSession session = await context.NewCDPSessionAsync(page);
        var registered = new TaskCompletionSource<string>();
        session.Event("ServiceWorker.workerRegistrationUpdated").OnEvent += (_, told) =>
        {
            foreach (JsonElement each in told!.Value.GetProperty("registrations").EnumerateArray())
                registered.TrySetResult(each.GetProperty("registrationId").GetString()!);
        };
        await session.SendAsync("ServiceWorker.enable");
        await session.SendAsync(
            "ServiceWorker.deliverPushMessage", new Dictionary<string,
            object> { ["origin"] = kitchen.Address, ["registrationId"] = await registered.Task, ["data"] = message });
        await session.DetachAsync();
    }

    /// <summary>What the phone shows, once a title is among it.</summary>
    private static async Task<JsonElement> NotificationsAsync(IPage page, string title) => JsonDocument.Parse(await page.EvaluateAsync<string>(
        """
        async title => {
          const worker = await navigator.serviceWorker.ready;
          for (;;) {
            const all = await worker.getNotifications();
            if (all.some(each => each.title === title))
              return JSON.stringify(all.map(each => (
                { title: each.title, body: each.body, tag: each.tag, actions: each.actions.map(action => action.action).join() })));
            await new Promise(resolve => setTimeout(resolve, 20));
          }
        }
        """, title)).RootElement;

    private static IEnumerable<string?> Each(JsonElement done, string field) =>
        done.GetProperty("said").EnumerateArray().Select(words => words.GetProperty(field).GetString());

    private async Task<Morning> MorningAsync() => await Morning.BeginAsync(await StartAsync(), ContextAsync, SubscribedAsync);

    /// <summary>A jar, a phone that has got the round of seven o'clock, and the worker's file run in a page with a notification that is
    /// pressed.</summary>
    private sealed class Morning(RunningKitchen kitchen, IBrowserContext context, IPage page, PushService service, string worker,
        string message) : IAsyncDisposable
    {
        public RunningKitchen Kitchen => kitchen;

        public IBrowserContext Context => context;

        public static async Task<Morning> BeginAsync(
            RunningKitchen kitchen, Func<RunningKitchen, Task<IBrowserContext>> browse, Func<IBrowserContext, RunningKitchen, PushService,
            PushBrowser, Task<IPage>> subscribe)
        {
            PushService service = await PushService.StartAsync();
            using var keys = new PushBrowser();
            IBrowserContext context = await browse(kitchen);
            IPage page = await subscribe(context, kitchen, service, keys);
            await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter");
            await page.GotoAsync(kitchen.Address + "/notices");
            kitchen.Clock.SetUtcNow((kitchen.Now.InZone(DateTimeZoneProviders.Tzdb["Europe/Vienna"]).Date.PlusDays(1) + new LocalTime(7, 0))
                .InZoneLeniently(DateTimeZoneProviders.Tzdb["Europe/Vienna"]).ToDateTimeOffset());
            await kitchen.SettleAsync();
            string worker = await page.EvaluateAsync<string>("async () => (await fetch('/push-worker.js')).text()");
            return new Morning(kitchen, context, page, service, worker, keys.Decrypt(service.Got.Single().Body));
        }

        /// <summary>Presses an action of the notification so many times; an empty one is a tap on its text.</summary>
        public async Task<JsonElement> PressAsync(string action, int presses = 1, int buttons = 2)
        {
            return JsonDocument.Parse(await page.EvaluateAsync<string>(
                $$"""
                async ({ message, action, presses, buttons }) => {
                  const heard = {}, said = [], opened = [], waits = [];
                  const self = {
                    addEventListener: (name, what) => { heard[name] = what; },
                    location: new URL('/push-worker.js', window.location),
                    registration: { showNotification: async (title, options) => said.push({ title, options }) },
                    clients: { matchAll: async () => [], openWindow: async path => opened.push(path) },
                    Notification: { maxActions: buttons },
                  };
                  {{worker}}
                  const fire = async (name, event) => { heard[name]({ ...event, waitUntil: what => waits.push(what) }); await Promise.all(waits); };
                  await fire('push', { data: { json: () => JSON.parse(message) } });
                  const { data } = said[0].options;
                  for (let press = 0; press < presses; press++)
                    await fire('notificationclick', { action, notification: { data, close() {} } });
                  return JSON.stringify({ opened, said: said.map(({ title, options }) => (
                    {
                      title, body: options.body, tag: options.tag, answer: options.data.answer,
                      actions: options.actions.map(each => each.action).join() })) });
                }
                """, new { message, action, presses, buttons })).RootElement;
        }

        public async Task<IEnumerable<Look>> LooksAsync() =>
            (await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(default)).SelectMany(jar => jar.Standing.OfType<Look>());

        public async ValueTask DisposeAsync()
        {
            await context.DisposeAsync();
            await kitchen.DisposeAsync();
            await service.DisposeAsync();
        }
    }
}
