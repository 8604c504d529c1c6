using System.Text.Json;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

public sealed partial class OfflineTests
{
    private async Task<Phone> PhoneAsync(int jars)
    {
        RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IBrowserContext context = await chromium.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        var phone = new Phone(kitchen, context, await context.NewPageAsync(), new Wire(kitchen));
        await phone.Page.SetUpAsync(kitchen);
        await phone.Page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "cellar", howMany: jars, daysAgo: 8);
        await phone.Page.GotoAsync(phone.Wire.Address + "/");
        await phone.KeptAsync();
        return phone;
    }

    /// <summary>A phone that is signed in and has the round of today.</summary>
    private sealed class Phone(RunningKitchen kitchen, IBrowserContext context, IPage page, Wire wire) : IAsyncDisposable
    {
        public RunningKitchen Kitchen => kitchen;

        public IBrowserContext Context => context;

        public IPage Page => page;

        public Wire Wire => wire;

        /// <summary>Waits until the worker has the round, its files, and this page.</summary>
        public Task<JsonElement?> KeptAsync() => page.EvaluateAsync(
            """
            async () => {
              await navigator.serviceWorker.ready;
              while (!navigator.serviceWorker.controller || !await caches.match('/') || !await caches.match('/unsent'))
                await new Promise(resolve => setTimeout(resolve, 20));
            }
            """);

        /// <summary>Looks at what is not sent and has it sent.</summary>
        public async Task SendAsync()
        {
            await page.GotoAsync(wire.Address + "/unsent");
            // Before it is sent there is a page to be made, and after it a forecast.
            await page.GetByText(Sent).WaitForAsync(new() { Timeout = 90_000 });
        }

        public async Task SignInAsync(string name)
        {
            await page.GotoAsync(wire.Address + "/sign-in");
            await page.GetByLabel("Name").FillAsync(name);
            await page.GetByLabel("Password").FillAsync(Walks.Password);
            await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
            await page.Locator("nav.rooms").WaitForAsync();
        }

        public Task<IReadOnlyList<Jar>> JarsAsync() => kitchen.Services.GetRequiredService<IJarBook>().AllAsync(default);

        /// <summary>All that was filed, also what was taken back, by jar.</summary>
        public async Task<IReadOnlyList<(int Jar, Observation What)>> ObservationsAsync() =>
            [.. (await kitchen.Services.GetRequiredService<IJarBook>().AllAsync(default)).OrderBy(jar => jar.Number)
                .SelectMany(jar => jar.Observations.Select(what => (jar.Number, what)))];

        public async ValueTask DisposeAsync()
        {
            await context.DisposeAsync();
            wire.Dispose();
            await kitchen.DisposeAsync();
        }
    }
}
