using System.Globalization;
using NodaTime;

namespace FermentWatch.TestKit;

/// <summary>A sensor added by command line, that reports by mosquitto_pub.</summary>
public sealed record Device(TestHost Host, string User, string Password)
{
    /// <summary>Adds a sensor.</summary>
    public static async Task<Device> AddAsync(TestHost host, string name)
    {
        (int exitCode, string output, string error) = await host.CommandAsync("sensor", "add", name);
        if (exitCode != 0)
            throw new InvalidOperationException(error);
        string Line(string word) => output.Split('\n').First(line => line.StartsWith(word, StringComparison.Ordinal))[word.Length..].Trim();
        return new Device(host, Line("user"), Line("password"));
    }

    /// <summary>Sends a bare temperature.</summary>
    public Task<(int ExitCode, string Error)> SendAsync(double celsius) =>
        Mosquitto.PublishAsync(Host.MqttPort, User, Password, $"fermentwatch/sensor/{User}/temperature",
        celsius.ToString(CultureInfo.InvariantCulture));

    /// <summary>Sends a SenML pack of temperatures with their times.</summary>
    public Task<(int ExitCode, string Error)> SendPackAsync(IEnumerable<(Instant At, double Celsius)> readings)
    {
        IEnumerable<string> records = readings.Select(reading => string.Create(CultureInfo.InvariantCulture,
            $$"""{"n":"temperature","u":"Cel","t":{{reading.At.ToUnixTimeSeconds()}},"v":{{reading.Celsius}}}"""));
        return Mosquitto.PublishAsync(Host.MqttPort, User, Password, $"fermentwatch/sensor/{User}", $"[{string.Join(',', records)}]");
    }

    /// <summary>Sends a pack of quarter-hourly temperatures over a span.</summary>
    public Task<(int ExitCode, string Error)> SendSpanAsync(Instant from, Instant until, Func<Instant, double> celsius)
    {
        var times = new List<Instant>();
        for (Instant at = from; at < until; at += Duration.FromMinutes(15))
            times.Add(at);
        return SendPackAsync(times.Select(at => (at, celsius(at))));
    }
}
