using System.Diagnostics;

namespace FermentWatch.Faults.Tests.Unit;

/// <summary>The system calls that our unit allows, worked out from its lines and the service manager's own groups.</summary>
internal static class UnitFilter
{
    /// <summary>Every call that is allowed by the lines of a unit, in their order: the first may only allow, later ones add and take away.</summary>
    public static async Task<SortedSet<string>> AllowedAsync(string unit)
    {
        var allowed = new SortedSet<string>(StringComparer.Ordinal);
        foreach (string line in unit.Split('\n').Where(line => line.StartsWith("SystemCallFilter=", StringComparison.Ordinal)))
        {
            string words = line["SystemCallFilter=".Length..].Trim();
            bool takesAway = words.StartsWith('~');
            if (allowed.Count == 0)
            {
                Assert.False(takesAway, "The first line must say what is allowed.");
                // A manager allows these whenever it is told what else is.
                await AddAsync(allowed, "@default");
            }
            foreach (string word in words.TrimStart('~').Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var named = new SortedSet<string>(StringComparer.Ordinal);
                await AddAsync(named, word);
                if (takesAway)
                    allowed.ExceptWith(named);
                else
                    allowed.UnionWith(named);
            }
        }
        return allowed;
    }

    private static async Task AddAsync(SortedSet<string> calls, string word)
    {
        if (!word.StartsWith('@'))
        {
            calls.Add(word);
            return;
        }
        foreach (string member in (await OutputOfAsync("systemd-analyze", "syscall-filter", word)).Split('\n')
            .Where(line => line.StartsWith("    ", StringComparison.Ordinal)).Select(line => line.Trim()).Where(line => !line.StartsWith('#')))
            await AddAsync(calls, member);
    }

    public static async Task<string> OutputOfAsync(string program, params string[] arguments)
    {
        using Process process =
            Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(), errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(3));
        return process.ExitCode == 0 ? await output : throw new InvalidOperationException($"{program} ended with {process.ExitCode}: {await errors}");
    }
}
