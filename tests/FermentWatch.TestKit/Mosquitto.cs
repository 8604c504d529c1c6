using System.Diagnostics;
using System.Globalization;

namespace FermentWatch.TestKit;

/// <summary>Debian's MQTT command line clients.</summary>
public static class Mosquitto
{
    /// <summary>Publishes with mosquitto_pub and waits for its end. Returns its exit code and what it said.</summary>
    public static async Task<(int ExitCode, string Error)> PublishAsync(int port, string user, string password, string topic, string payload,
        params string[] more)
    {
        var info = new ProcessStartInfo("mosquitto_pub") { RedirectStandardError = true };
        foreach (string argument in (string[])["-h", "127.0.0.1", "-p", port.ToString(CultureInfo.InvariantCulture), "-i", $"pub-{Guid.NewGuid():N}",
            "-u", user, "-P", password, "-q", "1", "-t", topic, "-m", payload, .. more])
            info.ArgumentList.Add(argument);
        using Process process = Process.Start(info)!;
        string error = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        return (process.ExitCode, error);
    }
}
