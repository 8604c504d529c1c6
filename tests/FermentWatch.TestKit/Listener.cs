using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace FermentWatch.TestKit;

/// <summary>
/// Debian's mosquitto_sub on the broker of a host, which connects again by itself when the host was away. It keeps what it heard.
/// </summary>
public sealed class Listener : IDisposable
{
    private const string StatusTopic = "fermentwatch/service/status";
    private readonly ConcurrentQueue<(string Topic, string Payload)> _heard = new();
    private readonly Process _process;

    private Listener(Process process) => _process = process;

    /// <summary>Every message but the service's own status, in order.</summary>
    public IEnumerable<string> Payloads => _heard.Where(message => message.Topic != StatusTopic).Select(message => message.Payload);

    /// <summary>How often it was connected: the retained status comes once with each subscription.</summary>
    public int Connections => _heard.Count(message => message == (StatusTopic, "online"));

    /// <summary>Adds a gateway by command line, whose credential may listen to a topic, and listens there.</summary>
    public static async Task<Listener> StartAsync(TestHost host, string name, string topic)
    {
        (int exitCode, string output, string error) = await host.CommandAsync("sensor", "add", name, "--gateway", topic);
        if (exitCode != 0)
            throw new InvalidOperationException(error);
        string password = output.Split('\n').First(line => line.StartsWith("password", StringComparison.Ordinal))["password".Length..].Trim();
        var info = new ProcessStartInfo("mosquitto_sub") { RedirectStandardOutput = true };
        foreach (string argument in (string[])["-h", "127.0.0.1", "-p", host.MqttPort.ToString(CultureInfo.InvariantCulture), "-i", name,
            "-u", name, "-P", password, "-q", "1", "-t", StatusTopic, "-t", topic, "-F", "%t %p"])
            info.ArgumentList.Add(argument);
        var listener = new Listener(Process.Start(info)!);
        listener._process.OutputDataReceived += (_, line) => listener.Hear(line.Data);
        listener._process.BeginOutputReadLine();
        await Patience.UntilAsync(() => listener.Connections > 0, "mosquitto_sub connects");
        return listener;
    }

    public void Dispose()
    {
        _process.Kill();
        _process.Dispose();
    }

    private void Hear(string? line)
    {
        if (line?.Split(' ', 2) is [string topic, string payload])
            _heard.Enqueue((topic, payload));
    }
}
