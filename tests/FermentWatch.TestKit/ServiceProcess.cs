using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace FermentWatch.TestKit;

/// <summary>The product as people run it: <c>serve</c> in a process of its own, by the machine's clock.</summary>
public sealed class ServiceProcess : IAsyncDisposable
{
    private static readonly TimeSpan _longest = TimeSpan.FromMinutes(3);

    private readonly ConcurrentQueue<string> _output = new();
    private readonly ConcurrentQueue<string> _errors = new();

    private ServiceProcess(Process process, int webPort, int mqttPort)
    {
        Process = process;
        (WebPort, MqttPort) = (webPort, mqttPort);
        process.OutputDataReceived += (_, line) => Note(_output, line.Data);
        process.ErrorDataReceived += (_, line) => Note(_errors, line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public Process Process { get; }

    public int WebPort { get; }

    public int MqttPort { get; }

    /// <summary>Where the pages are.</summary>
    public Uri Web => new($"http://127.0.0.1:{WebPort}");

    /// <summary>What it has written to its log.</summary>
    public IReadOnlyCollection<string> Output => _output;

    /// <summary>What it has said on standard error.</summary>
    public IReadOnlyCollection<string> Errors => _errors;

    /// <summary>Starts it and does not wait.</summary>
    /// <param name="folder">Where its databases are.</param>
    /// <param name="shell">What a shell does first, like <c>umask 0</c>.</param>
    /// <param name="settings">More environment variables.</param>
    /// <param name="webPort">The port of the pages; none takes a free one.</param>
    /// <param name="mqttPort">The port of the broker; none takes a free one.</param>
    /// <param name="arguments">What else the verb is told, as a shell reads it.</param>
    public static ServiceProcess Start(
        string folder, string shell = "true", IReadOnlyDictionary<string, string>? settings = null, int? webPort = null, int? mqttPort = null,
        string arguments = "")
    {
        (int web, int mqtt) = (webPort ?? FreePort(), mqttPort ?? FreePort());
        var info = new ProcessStartInfo("/bin/sh") { RedirectStandardOutput = true, RedirectStandardError = true };
        info.ArgumentList.Add("-c");
        info.ArgumentList.Add($"{shell}; exec dotnet '{Path.Combine(AppContext.BaseDirectory, "FermentWatch.Service.dll")}' serve {arguments}");
        info.Environment["FERMENTWATCH__STORAGE__FOLDER"] = folder;
        info.Environment["FERMENTWATCH__WEB__PORT"] = web.ToString(CultureInfo.InvariantCulture);
        info.Environment["FERMENTWATCH__MQTT__PORT"] = mqtt.ToString(CultureInfo.InvariantCulture);
        foreach ((string name, string value) in settings ?? new Dictionary<string, string>())
            info.Environment[name] = value;
        return new ServiceProcess(Process.Start(info)!, web, mqtt);
    }

    /// <summary>Waits until it answers that it lives.</summary>
    /// <exception cref="InvalidOperationException">It ended instead.</exception>
    public async Task<ServiceProcess> UpAsync()
    {
        using var http = new HttpClient { Timeout = TimeSpan.FromSeconds(5) };
        long start = TimeProvider.System.GetTimestamp();
        while (TimeProvider.System.GetElapsedTime(start) < _longest)
        {
            if (Process.HasExited)
                throw new InvalidOperationException($"The service ended: {string.Join('\n', _errors)}");
            try
            {
                if ((await http.GetAsync(new Uri(Web, "/healthz/live"))).IsSuccessStatusCode)
                    return this;
            }
            catch (Exception trouble) when (trouble is HttpRequestException or TaskCanceledException)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
            }
        }
        throw new TimeoutException("The service did not come up.");
    }

    /// <summary>Asks it to end, as a service manager does, and waits. Returns how long it took.</summary>
    public async Task<TimeSpan> StopAsync()
    {
        long start = TimeProvider.System.GetTimestamp();
        await SignalAsync("TERM");
        await EndedAsync();
        return TimeProvider.System.GetElapsedTime(start);
    }

    /// <summary>Sends it a signal.</summary>
    public async Task SignalAsync(string name)
    {
        using Process kill = Process.Start("/bin/kill", [$"-{name}", Process.Id.ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync().WaitAsync(_longest);
    }

    /// <summary>Waits until it has ended and all it said has been read. Returns its exit code.</summary>
    public async Task<int> EndedAsync()
    {
        await Process.WaitForExitAsync().WaitAsync(_longest);
        return Process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!Process.HasExited)
        {
            Process.Kill();
            await EndedAsync();
        }
        Process.Dispose();
    }

    /// <summary>A port nobody has at this moment.</summary>
    public static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }

    private static void Note(ConcurrentQueue<string> lines, string? line)
    {
        if (!string.IsNullOrEmpty(line))
            lines.Enqueue(line);
    }
}
