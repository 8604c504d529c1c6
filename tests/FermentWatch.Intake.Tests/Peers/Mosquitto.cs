using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace FermentWatch.Intake.Tests.Peers;

/// <summary>Debian's mosquitto as a process of its own on loopback, with its store in a folder that outlives it.</summary>
internal sealed class Mosquitto : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fermentwatch-mosquitto-");
    private Process? _process;

    private Mosquitto(int port, params string[] more)
    {
        Port = port;
        File.WriteAllLines(ConfigFile,
        [
            $"listener {port} 127.0.0.1",
            "persistence true",
            $"persistence_location {_folder.FullName}/",
            "autosave_on_changes true",
            "autosave_interval 1",
            "set_tcp_nodelay true",
            "max_queued_messages 100000",
            "max_inflight_messages 1000",
            "log_type none",
            .. Environment.UserName == "root" ? ["user root"] : Array.Empty<string>(),
            .. more.Length > 0 ? more : ["allow_anonymous true"],
        ]);
    }

    public int Port { get; }

    private string ConfigFile => Path.Combine(_folder.FullName, "mosquitto.conf");

    public static async Task<Mosquitto> StartAsync(params string[] more)
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        int port = ((IPEndPoint)probe.LocalEndpoint).Port;
        probe.Stop();
        var broker = new Mosquitto(port, more);
        await broker.StartAgainAsync();
        return broker;
    }

    public async Task StartAgainAsync()
    {
        string program = File.Exists("/usr/sbin/mosquitto") ? "/usr/sbin/mosquitto" : "mosquitto";
        _process = Process.Start(new ProcessStartInfo(program, ["-c", ConfigFile]) { RedirectStandardError = true })!;
        while (!Listens())
        {
            if (_process.HasExited)
                throw new InvalidOperationException($"mosquitto ended: {await _process.StandardError.ReadToEndAsync()}");
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
        }
    }

    /// <summary>Ends it without warning, as a power cut would.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
    }

    /// <summary>Ends it as its service manager would: it saves what it keeps first.</summary>
    public async Task StopAsync()
    {
        using Process stop = Process.Start("kill", ["-TERM", $"{_process!.Id}"]);
        await stop.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        await _process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is { HasExited: false })
            await KillAsync();
        _process?.Dispose();
        _folder.Delete(true);
    }

    private bool Listens()
    {
        using var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            socket.Connect(IPAddress.Loopback, Port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
