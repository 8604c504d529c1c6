using System.Diagnostics;

namespace FermentWatch.Intake.Tests.Peers;

/// <summary>Debian's mosquitto_pub as a process of its own.</summary>
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
        await process.WaitForExitAsync();
        return (process.ExitCode, error);
    }
}
