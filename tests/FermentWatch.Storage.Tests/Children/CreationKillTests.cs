using System.Diagnostics;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using Xunit.Abstractions;

namespace FermentWatch.Storage.Tests.Children;

/// <summary>SIGKILL against a process that is making a database.</summary>
public class CreationKillTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("readings", 60)]
    [InlineData("records", 900)]
    public async Task Open_KilledWhileCreating_LeavesNoneOrAWholeOne(string kind, int creationTakesMilliseconds)
    {
        var random = new Random(20251004);
        int none = 0, whole = 0;
        for (int kill = 0; kill < TestLength.Of(reduced: 5, full: 20); kill++)
        {
            using var folder = new TemporaryFolder();
            string path = folder.File("new.db");
            await KillAsync(kind, path, TimeSpan.FromMilliseconds(random.NextDouble() * creationTakesMilliseconds));
            _ = File.Exists(path) ? whole++ : none++;

            if (kind == "readings")
                await ReadingStore.Open(path).DisposeAsync();
            else
                RecordsDatabase.CreateOrUpgrade(path, TimeProvider.System);
            Assert.Equal(["new.db"], Directory.GetFiles(folder.Root).Select(Path.GetFileName));
            Assert.Equal("ok", TemporaryFolder.Sql(path, "PRAGMA integrity_check"));
        }

        output.WriteLine($"{kind}.db killed while it was made: {none} times there was none after it, {whole} times a whole one");
    }

    /// <summary>Kills the process a while after it has made the first file of the database.</summary>
    private static async Task KillAsync(string kind, string path, TimeSpan after)
    {
        string folder = Path.GetDirectoryName(path)!;
        using var child = ChildProcess.Start("create", kind, path);
        SpinWait.SpinUntil(() => child.HasExited || Directory.EnumerateFiles(folder).Any(file => !file.EndsWith(".lock", StringComparison.Ordinal)));
        long begun = Stopwatch.GetTimestamp();
        SpinWait.SpinUntil(() => child.HasExited || Stopwatch.GetElapsedTime(begun) >= after);
        child.Kill();
        await child.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
    }
}
