using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using QRCoder;

namespace FermentWatch.Web.Accounts;

/// <summary>
/// Says at start where the owner sets a password, as long as nobody has one: every address at which the page answers, and, to a
/// person at a terminal, the first that a phone can reach as a QR code.
/// </summary>
internal sealed partial class SetUpNotice(SetUpToken token, WebOptions web, IServer server, IHostApplicationLifetime lifetime,
    ILogger<SetUpNotice> logger) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using var registration = lifetime.ApplicationStarted.Register(() => started.TrySetResult());
        await started.Task.WaitAsync(stoppingToken);
        if (await token.PathAsync(stoppingToken) is not { } path)
            return;
        IReadOnlyList<string> addresses = [.. Addresses().Select(address => new Uri(address, web.SubPath + path).ToString())];
        foreach (string address in addresses)
            SayWhere(logger, address);
        if (!Console.IsOutputRedirected && addresses.Count > 0)
            await Console.Out.WriteLineAsync($"{QrCode(addresses[0])}{Environment.NewLine}{addresses[0]}");
    }

    /// <summary>An address as a QR code of half blocks, as dark on light as a terminal is.</summary>
    internal static string QrCode(string address)
    {
        using QRCodeData code = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.L);
        using var drawn = new AsciiQRCode(code);
        return drawn.GetGraphicSmall();
    }

    private IReadOnlyList<Uri> Addresses() => AnsweringAddresses.Of(
        server.Features.Get<IServerAddressesFeature>()?.Addresses ?? [], AnsweringAddresses.OwnOfThisMachine());

    [LoggerMessage(4001, LogLevel.Warning, "Nobody can sign in yet. The owner sets a password here, once: {Address}")]
    private static partial void SayWhere(ILogger logger, string address);
}
