using System.Net.Sockets;
using System.Text;
using FermentWatch.TestKit;

namespace FermentWatch.Faults.Tests;

/// <summary>What the service tells a service manager, over the socket as sd_notify(3) and sd_watchdog_enabled(3) of systemd describe it.</summary>
public sealed class WatchdogTests : IDisposable
{
    private static readonly TimeSpan _longest = TimeSpan.FromMinutes(3);

    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("fermentwatch-watchdog-");

    public void Dispose() => _root.Delete(recursive: true);

    [Fact]
    public async Task Serve_UnderAServiceManager_SaysThatItIsReadyThatItLivesAndThatItStops()
    {
        string path = Path.Combine(_root.FullName, "notify");
        using var manager = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
        manager.Bind(new UnixDomainSocketEndPoint(path));
        await using ServiceProcess service = ServiceProcess.Start(Path.Combine(_root.FullName, "data"), "true", new Dictionary<string, string>
        {
            ["NOTIFY_SOCKET"] = path, ["WATCHDOG_USEC"] = "1000000",
        });
        await HearAsync(manager, "READY=1");
        for (int beat = 0; beat < 3; beat++)
            await HearAsync(manager, "WATCHDOG=1");
        await service.SignalAsync("TERM");
        await HearAsync(manager, "STOPPING=1");
        Assert.Equal(0, await service.EndedAsync());
    }

    private static async Task HearAsync(Socket manager, string state)
    {
        byte[] message = new byte[512];
        using var patience = new CancellationTokenSource(_longest, TimeProvider.System);
        string heard;
        do
            heard = Encoding.UTF8.GetString(message, 0, await manager.ReceiveAsync(message, patience.Token));
        while (heard != state);
    }
}
