using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace FermentWatch.Faults.Tests;

/// <summary>Both doors and the log in a process that is killed again and again, on the same folder and port.</summary>
internal sealed class KilledHost(int outsidePort) : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fermentwatch-kill-");
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    private Process? _process;

    public const string Password = "correct-horse-battery";

    public int MqttPort { get; } = FreePort();

    public string ReadingsFile => Path.Combine(_folder.FullName, "readings.db");

    public async Task StartAsync()
    {
        _process = Process.Start(new ProcessStartInfo(
            "dotnet",
            [Path.Combine(AppContext.BaseDirectory, "FermentWatch.DoorHost.dll"), _folder.FullName, Password, $"{MqttPort}", $"{outsidePort}"])
        {
            RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true,
        })!;
        if (await _process.StandardOutput.ReadLineAsync().WaitAsync(Longest) != "ready")
            Assert.Fail($"The host did not start: {await _process.StandardError.ReadToEndAsync()}");
    }

    /// <summary>Ends it as a power cut would.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync().WaitAsync(Longest);
        _process.Dispose();
        _process = null;
    }

    /// <summary>Ends it in order.</summary>
    public async Task StopAsync()
    {
        _process!.StandardInput.Close();
        await _process.WaitForExitAsync().WaitAsync(Longest);
        Assert.Equal(0, _process.ExitCode);
        _process.Dispose();
        _process = null;
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
            await KillAsync();
        _folder.Delete(true);
    }

    private static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
