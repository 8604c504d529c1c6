using System.Diagnostics;
using System.Globalization;

namespace FermentWatch.Faults.Tests;

/// <summary>The product as people run it, in a process of its own, at a broker of the household's, on a folder that outlives it.</summary>
internal sealed class ProductAtBroker(int brokerPort) : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fermentwatch-product-");
    private Process? _process;
    private int _connects;

    /// <summary>How often it said that it is connected, over all its runs.</summary>
    public int Connects => Volatile.Read(ref _connects);

    public string ReadingsFile => Path.Combine(_folder.FullName, "readings.db");

    /// <summary>Starts it, and does not wait until it is connected.</summary>
    public void Start()
    {
        Process process = Process.Start(Call("serve"))!;
        process.OutputDataReceived += (_, line) =>
        {
            if (line.Data?.Contains("Connected to the outside broker", StringComparison.Ordinal) == true)
                Interlocked.Increment(ref _connects);
        };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        _process = process;
    }

    /// <summary>Carries out another verb on its folder.</summary>
    public async Task CommandAsync(params string[] arguments)
    {
        using Process process = Process.Start(Call(arguments))!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        Assert.True(process.ExitCode == 0, await error);
    }

    /// <summary>Ends it as a power cut would.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        _process.Dispose();
        _process = null;
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
            await KillAsync();
        _folder.Delete(true);
    }

    private ProcessStartInfo Call(params string[] arguments)
    {
        var info = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "FermentWatch.Service.dll"), .. arguments])
        {
            RedirectStandardOutput = true, RedirectStandardError = true,
        };
        info.Environment["FERMENTWATCH__STORAGE__FOLDER"] = _folder.FullName;
        info.Environment["FERMENTWATCH__WEB__PORT"] = "0";
        info.Environment["FERMENTWATCH__MQTT__ENABLED"] = "false";
        info.Environment["FERMENTWATCH__OUTSIDEBROKER__HOST"] = "127.0.0.1";
        info.Environment["FERMENTWATCH__OUTSIDEBROKER__PORT"] = brokerPort.ToString(CultureInfo.InvariantCulture);
        return info;
    }
}
