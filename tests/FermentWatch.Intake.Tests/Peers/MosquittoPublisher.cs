using System.Diagnostics;

namespace FermentWatch.Intake.Tests.Peers;

/// <summary>Debian's mosquitto_pub and mosquitto_sub as processes of their own.</summary>
internal static class MosquittoPublisher
{
    /// <summary>Runs it and returns its exit code and what it wrote to standard error.</summary>
    public static async Task<(int ExitCode, string Error)> RunAsync(params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo("mosquitto_pub", arguments)
        {
            RedirectStandardError = true, RedirectStandardInput = true,
        })!;
        process.StandardInput.Close();
        string error = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        return (process.ExitCode, error);
    }

    /// <summary>What is heard under a filter, one message a line with its topic, until there are so many.</summary>
    public static async Task<string> HearAsync(int port, string filter, int messages)
    {
        using Process process = Process.Start(new ProcessStartInfo(
            "mosquitto_sub", ["-h", "127.0.0.1", "-p", $"{port}", "-t", filter, "-v", "-C", $"{messages}", "-W", "20"])
        {
            RedirectStandardOutput = true,
        })!;
        string heard = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        return heard;
    }
}
