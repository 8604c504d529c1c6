using System.Diagnostics;
using System.Globalization;

namespace FermentWatch.Benchmarks.Archives;

/// <summary>One verb of the product in a process of its own: how long it took, and the most memory it held.</summary>
/// <param name="Output">What it printed.</param>
/// <param name="Time">From start to end.</param>
/// <param name="PeakKilobytes">The most that was resident (VmHWM).</param>
internal sealed record Verb(string Output, TimeSpan Time, long PeakKilobytes)
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(20);

    /// <summary>Carries it out on a folder.</summary>
    /// <exception cref="InvalidOperationException">It failed; the message is what it said.</exception>
    public static async Task<Verb> RunAsync(string folder, params string[] args)
    {
        var info = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "FermentWatch.Service.dll"), .. args])
        {
            RedirectStandardOutput = true, RedirectStandardError = true,
        };
        info.Environment["FERMENTWATCH__STORAGE__FOLDER"] = folder;
        long begun = Stopwatch.GetTimestamp();
        using Process process = Process.Start(info)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        long peak = 0;
        while (!process.HasExited)
        {
            peak = Math.Max(peak, PeakOf(process.Id));
            await Task.Delay(BetweenLooks, TimeProvider.System);
        }
        TimeSpan time = Stopwatch.GetElapsedTime(begun);
        return process.ExitCode == 0 ? new Verb((await output).Trim(), time, peak)
            : throw new InvalidOperationException($"{string.Join(' ', args)}: {await error}");
    }

    /// <summary>In a line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Time.TotalSeconds:F1} s, at most {PeakKilobytes / 1024} MB resident");

    private static long PeakOf(int process)
    {
        try
        {
            string line = File.ReadLines($"/proc/{process}/status").FirstOrDefault(each => each.StartsWith("VmHWM:", StringComparison.Ordinal)) ?? "";
            return long.TryParse(line.AsSpan().TrimStart("VmHWM:").TrimEnd("kB").Trim(), CultureInfo.InvariantCulture, out long kilobytes)
                ? kilobytes : 0;
        }
        catch (IOException)
        {
            // It has ended in the meantime.
            return 0;
        }
    }
}
