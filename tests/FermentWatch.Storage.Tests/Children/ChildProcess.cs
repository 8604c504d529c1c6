using System.Diagnostics;

namespace FermentWatch.Storage.Tests.Children;

/// <summary>Starts this assembly as a process of its own.</summary>
internal static class ChildProcess
{
    private static readonly string Assembly = typeof(ChildProcess).Assembly.Location;

    internal static Process Start(params string[] arguments) => Start("dotnet", [Assembly, .. arguments]);

    /// <summary>As <see cref="Start"/>, in a process that may not let any file grow beyond a size.</summary>
    internal static Process StartWithFileLimit(int kilobytes, params string[] arguments) =>
        // Without the trap the system ends a process that writes beyond the limit; with it the write fails, as on a full disk.
        Start("bash", ["-c", $"trap '' XFSZ; ulimit -S -f {kilobytes}; exec dotnet \"$@\"", "bash", Assembly, .. arguments]);

    private static Process Start(string program, string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardInput = true };
        // The runtime's double mapping of code needs a large file in memory, which the file limit would forbid.
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        return Process.Start(start)!;
    }
}
