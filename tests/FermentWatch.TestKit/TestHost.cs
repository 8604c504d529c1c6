using System.Diagnostics;
using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.TestKit;

/// <summary>The product in a process of its own, with a clock that the test steers.</summary>
public sealed partial class TestHost : IAsyncDisposable
{
    // A year is stepped through in one command; a process that hangs must not hold up the run for ever.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    private readonly Process _process;
    private readonly string _folder;
    private bool _isDisposed;

    private TestHost(Process process, string folder, Uri web, int mqttPort)
    {
        _process = process;
        _folder = folder;
        Web = web;
        MqttPort = mqttPort;
    }

    public Uri Web { get; }

    public int MqttPort { get; }

    /// <summary>What it has used of the processors since its start, all threads together.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime;
        }
    }

    /// <summary>Starts it on a folder, which may hold what an earlier one left.</summary>
    public static async Task<TestHost> StartAsync(string folder, Instant start, params string[] more)
    {
        string dll = Path.Combine(AppContext.BaseDirectory, "FermentWatch.TestHost.dll");
        var info = new ProcessStartInfo("dotnet")
        {
            RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = AppContext.BaseDirectory,
        };
        foreach (string argument in (string[])[dll, "--folder", folder, "--start", InstantPattern.ExtendedIso.Format(start), .. more])
            info.ArgumentList.Add(argument);
        Process process = Process.Start(info)!;
        var errors = new List<string>();
        process.ErrorDataReceived += (_, line) => errors.Add(line.Data ?? "");
        process.BeginErrorReadLine();
        while (await process.StandardOutput.ReadLineAsync().WaitAsync(Longest) is { } line)
            if (Listening().Match(line) is { Success: true } match)
                return new TestHost(process, folder, new Uri(match.Groups["web"].Value),
                    int.Parse(match.Groups["mqtt"].Value, System.Globalization.CultureInfo.InvariantCulture));
        throw new InvalidOperationException($"The host did not start: {string.Join('\n', errors)}");
    }

    /// <summary>Moves the clock and waits until every loop has run.</summary>
    public Task ToAsync(Instant instant) => AskAsync($"to {InstantPattern.ExtendedIso.Format(instant)}");

    /// <summary>
    /// Moves the clock with no timer on the way, as on a machine that slept, and waits until every loop has run. Much faster
    /// than <see cref="ToAsync"/> over hours: nothing is done for the minutes between.
    /// </summary>
    public Task JumpAsync(Instant instant) => AskAsync($"jump {InstantPattern.ExtendedIso.Format(instant)}");

    /// <summary>Waits until every loop has run.</summary>
    public Task SettleAsync() => AskAsync("settle");

    /// <summary>Ends it as a power cut would.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync().WaitAsync(Longest);
    }

    /// <summary>Carries out a call of the command line on the same folder.</summary>
    public async Task<(int ExitCode, string Output, string Error)> CommandAsync(params string[] arguments)
    {
        var info = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        info.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "FermentWatch.Service.dll"));
        foreach (string argument in arguments)
            info.ArgumentList.Add(argument);
        info.Environment["FERMENTWATCH__STORAGE__FOLDER"] = _folder;
        info.Environment["FERMENTWATCH__MQTT__PORT"] = MqttPort.ToString(System.Globalization.CultureInfo.InvariantCulture);
        info.Environment["FERMENTWATCH__WEB__PORT"] = Web.Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        using Process call = Process.Start(info)!;
        Task<string> output = call.StandardOutput.ReadToEndAsync(), error = call.StandardError.ReadToEndAsync();
        await call.WaitForExitAsync().WaitAsync(Longest);
        return (call.ExitCode, await output, await error);
    }

    public async ValueTask DisposeAsync()
    {
        if (_isDisposed)
            return;
        _isDisposed = true;
        if (!_process.HasExited)
        {
            await _process.StandardInput.WriteLineAsync("stop");
            await _process.WaitForExitAsync().WaitAsync(Longest);
        }
        _process.Dispose();
    }

    private async Task AskAsync(string command)
    {
        await _process.StandardInput.WriteLineAsync(command);
        await _process.StandardInput.FlushAsync();
        while (await _process.StandardOutput.ReadLineAsync().WaitAsync(Longest) is { } line)
            if (line.StartsWith("at ", StringComparison.Ordinal))
                return;
        throw new InvalidOperationException("The host has ended.");
    }

    [GeneratedRegex("^listening web=(?<web>\\S+) mqtt=(?<mqtt>\\d+)")]
    private static partial Regex Listening();
}
