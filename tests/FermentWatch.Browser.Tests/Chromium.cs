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

    private IPlaywright? _playwright;

    public IBrowser Browser { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = OnPath("chromium"), Args = Flags });
    }

    public async Task DisposeAsync()
    {
        await Browser.DisposeAsync();
        _playwright?.Dispose();
    }

    private static string OnPath(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, program))
            .FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException($"{program} is not on PATH: apt-get install chromium");
}
