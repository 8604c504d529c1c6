using System.Globalization;

namespace FermentWatch.Service.CommandLine;

/// <summary>How many files may be open: with too few the runtime cannot load its parts, or ends when a connection takes the last.</summary>
internal static class OpenFiles
{
    // Some 360 at rest, of which most are the parts of the program; 712 clients of the broker; 500 of the pages; the databases.
    private const int Fewest = 2048;
    private const string Line = "Max open files";

    /// <summary>What to say where the limit is too low; null where it is not, or cannot be told.</summary>
    public static string? TooFew()
    {
        try
        {
            string? limits = File.ReadLines("/proc/self/limits").FirstOrDefault(line => line.StartsWith(Line, StringComparison.Ordinal));
            string? soft = limits?[Line.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries).FirstOrDefault();
            return int.TryParse(soft, NumberStyles.None, CultureInfo.InvariantCulture, out int most) && most < Fewest
                ? $"fermentwatch needs to open {Fewest} files and may open {most}: raise the limit (ulimit -n, or LimitNOFILE of the unit)."
                : null;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
