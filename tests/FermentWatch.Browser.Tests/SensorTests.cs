using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>A sensor from the first tap to the shelf it ends on, without a terminal but for the line that stands on the page.</summary>
public sealed class SensorTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task Add_OnThePage_ShowsThePasswordOnceAndTheFirstReadingAsItArrives()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await context.NewPageAsync();
        var wrong = new List<string>();
        page.Console += (_, said) => wrong.Add(said.Text);
        await AddAsync(page, kitchen, "Küche, Regal");
        await page.GetByText("Waiting for the first reading").WaitForAsync();
        string line = await page.InnerTextAsync(".paste code"), password = await PasswordAsync(page);
        Assert.Contains(" -u kueche-regal ", line, StringComparison.Ordinal);
        Assert.Equal("Küche, Regal", await page.InnerTextAsync("main h1"));

        await PasteAsync(line);

        await page.GetByText("It reports", new() { Exact = true }).WaitForAsync();
        Assert.Equal("21.5 °C, today 12:00", await page.InnerTextAsync("#first-reading .lead"));
        Assert.DoesNotContain(wrong, text => text.Contains("Content Security Policy", StringComparison.Ordinal));
        foreach (string path in new[] { "/sensors", "/sensors/kueche-regal", "/sensors/kueche-regal/first" })
        {
            await page.GotoAsync(kitchen.Address + path);
            string text = await page.WholeTextAsync();
            Assert.Contains("21.5 °C", text, StringComparison.Ordinal);
            Assert.DoesNotContain(password, text, StringComparison.Ordinal);
            Assert.DoesNotMatch(@"\bCel\b|SenML", text);
        }
    }

    [Fact]
    public async Task Wait_WithoutScript_ThePageLoadsItselfAgainAndSaysWhatCouldNotBeRead()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await AddAsync(page, kitchen, "cellar shelf");
        string line = await page.InnerTextAsync(".paste code");
        await page.GetByRole(AriaRole.Link, new() { Name = "Wait on a page of its own" }).ClickAsync();
        await page.ArriveAsync(kitchen.Address + "/sensors/cellar-shelf/first");

        await PasteAsync(line.Replace("-m 21.5", "-m 21,5", StringComparison.Ordinal));
        await page.GetByText("Something came and could not be read: “21,5”").WaitForAsync(new() { Timeout = 60_000 });
        await PasteAsync(line);
        await page.GetByText("It reports", new() { Exact = true }).WaitForAsync(new() { Timeout = 60_000 });
        Assert.Contains("21.5 °C, today 12:00", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Add_TheSameFormSentAgain_IsOneSensorAndThePasswordShownLastLetsIn()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await AddAsync(page, kitchen, "cellar shelf");
        string first = await page.InnerTextAsync(".paste code");
        await page.ReloadAsync();
        string second = await page.InnerTextAsync(".paste code");

        Assert.NotEqual(first, second);
        Assert.Single(await SensorsAsync(kitchen));
        Assert.NotEqual(0, await RunAsync(first));
        Assert.Equal(0, await RunAsync(second));
    }

    [Fact]
    public async Task Rename_Move_Retire_KeepTopicReadingsAndWhereTheyWereMeasured()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await AddAsync(page, kitchen, "cellar shelf");
        await PasteAsync(await page.InnerTextAsync(".paste code"));
        await page.GotoAsync(kitchen.Address + "/sensors");
        await page.GetByRole(AriaRole.Link, new() { Name = "Rename, move, retire" }).ClickAsync();
        await page.GetByLabel("What you call it").FillAsync(" ");
        await page.GetByRole(AriaRole.Button, new() { Name = "Rename" }).ClickAsync();
        Assert.Contains("such as 'cellar shelf'", await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        await page.GetByLabel("What you call it").FillAsync("Fensterbank");
        await page.GetByRole(AriaRole.Button, new() { Name = "Rename" }).ClickAsync();
        await page.GetByText("Saved.").WaitForAsync();
        kitchen.Clock.Advance(TimeSpan.FromHours(1));
        await page.GetByLabel("It measures").SelectOptionAsync("place refrigerator");
        await page.GetByRole(AriaRole.Button, new() { Name = "Move" }).ClickAsync();
        await page.GetByText("Saved.").WaitForAsync();

        Sensor sensor = Assert.Single(await SensorsAsync(kitchen));
        Assert.Equal(("cellar-shelf", "Fensterbank"), (sensor.Slug, sensor.Name));
        var places = (await kitchen.Services.GetRequiredService<IPlaceBook>().AllAsync(default)).ToDictionary(place => place.Id, place => place.Name);
        Assert.Equal(["cellar", "refrigerator"], sensor.Placements.Select(placement => places[placement.PlaceId!.Value]));

        await page.GetByText("Take it out of service").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Retire Fensterbank" }).ClickAsync();
        await page.GetByText("Out of service. Its readings stay.").WaitForAsync();
        Assert.Equal(0, await page.GetByText("Fensterbank").CountAsync());
        Assert.NotNull(Assert.Single(await SensorsAsync(kitchen)).RemovedAt);
        Assert.Single(await kitchen.Services.GetRequiredService<IReadingLog>().LastAsync(sensor.Key, default));
    }

    [Fact]
    public async Task SetUpAgain_MakesAPasswordThatTakesThePlaceOfTheOneBefore()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await AddAsync(page, kitchen, "cellar shelf");
        string before = await page.InnerTextAsync(".paste code");
        await page.GotoAsync(kitchen.Address + "/sensors/cellar-shelf");
        await page.GetByText("Set it up again").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a new password" }).ClickAsync();
        string after = await page.InnerTextAsync(".paste code");
        Assert.NotEqual(0, await RunAsync(before));
        Assert.Equal(0, await RunAsync(after));
    }

    [Fact]
    public async Task Pages_OfASensorThatIsSetUp_AreDrawnAndAxeFindsNothing()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await context.NewPageAsync();
        var findings = new List<string>();
        string folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "pictures-sensors")).FullName;
        await AddAsync(page, kitchen, "Küche, Regal");
        string line = await page.InnerTextAsync(".paste code");
        await PagePictureTests.DrawAsync(page, "sensor-added", findings, folder);
        foreach ((string name, string path) in new[] { ("sensor-add", "/sensors/add"), ("sensor-new", "/sensors/kueche-regal"),
            ("sensor-waiting", "/sensors/kueche-regal/first"), ("sensors-waiting", "/sensors") })
        {
            await page.GotoAsync(kitchen.Address + path);
            await PagePictureTests.DrawAsync(page, name, findings, folder);
        }
        await PasteAsync(line);
        await page.GotoAsync(kitchen.Address + "/sensors/kueche-regal/first");
        await PagePictureTests.DrawAsync(page, "sensor-reports", findings, folder);
        Assert.True(findings.Count == 0, string.Join(Environment.NewLine, findings));
    }

    [Fact]
    public async Task Child_FindsNoFormsOfSensors()
    {
        await using RunningKitchen kitchen = await StartAsync();
        await using IBrowserContext owner = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage page = await owner.NewPageAsync();
        await AddAsync(page, kitchen, "cellar shelf");
        await page.AddMemberAsync(kitchen, "Lena", child: true);
        await using IBrowserContext child = await chromium.NewContextAsync(new() { JavaScriptEnabled = false });
        IPage other = await child.NewPageAsync();
        await other.GotoAsync(kitchen.Address + "/sign-in");
        await other.GetByLabel("Name").FillAsync("Lena");
        await other.GetByLabel("Password").FillAsync(Walks.Password);
        await other.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        foreach (string path in new[] { "/sensors/add", "/sensors/cellar-shelf" })
        {
            await other.GotoAsync(kitchen.Address + path);
            Assert.Equal(0, await other.Locator("main form").CountAsync());
        }
    }

    private static async Task<RunningKitchen> StartAsync() =>
        await RunningKitchen.StartAsync(("Mqtt:Enabled", "true"), ("Mqtt:Port", FreePort().ToString(CultureInfo.InvariantCulture)));

    private static async Task AddAsync(IPage page, RunningKitchen kitchen, string name)
    {
        await page.SetUpAsync(kitchen);
        await page.GetByRole(AriaRole.Link, new() { Name = "Sensors" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Add a sensor" }).ClickAsync();
        await page.GetByLabel("What you call it").FillAsync(name);
        await page.GetByLabel("It measures").SelectOptionAsync("place cellar");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add it" }).ClickAsync();
        await page.Locator(".paste code").WaitForAsync();
    }

    private static async Task<string> PasswordAsync(IPage page) => await page.Locator("dt:text-is('Password') + dd").InnerTextAsync();

    /// <summary>The line as somebody pastes it into a terminal.</summary>
    private static async Task PasteAsync(string line) => Assert.Equal(0, await RunAsync(line));

    private static async Task<int> RunAsync(string line)
    {
        using Process shell = Process.Start(new ProcessStartInfo("bash", ["-c", line]) { RedirectStandardError = true })!;
        await shell.WaitForExitAsync();
        return shell.ExitCode;
    }

    private static Task<IReadOnlyList<Sensor>> SensorsAsync(RunningKitchen kitchen) =>
        kitchen.Services.GetRequiredService<ISensorBook>().AllAsync(default);

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
