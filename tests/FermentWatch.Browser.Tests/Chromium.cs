using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>The system's own headless Chromium.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
            "--disable-sync",
    ];

    // Tests run beside each other on few cores, and by the steered clock an answer may wait for the forecast of every jar.
    private static readonly float PatienceMilliseconds = (float)TimeSpan.FromMinutes(3).TotalMilliseconds;

    private IPlaywright? _playwright;

    private IBrowser _browser = null!;

    public async Task InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = OnPath("chromium"), Args = Flags });
        Assertions.SetDefaultExpectTimeout(PatienceMilliseconds);
    }

    /// <summary>A browser that nobody has used yet, with patience.</summary>
    public async Task<IBrowserContext> NewContextAsync(BrowserNewContextOptions? options = null)
    {
        IBrowserContext context = await _browser.NewContextAsync(options);
        context.SetDefaultTimeout(PatienceMilliseconds);
        return context;
    }

    public async Task DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright?.Dispose();
    }

    private static string OnPath(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, program))
            .FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException($"{program} is not on PATH: apt-get install chromium");
}
