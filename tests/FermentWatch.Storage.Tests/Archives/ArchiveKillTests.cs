using FermentWatch.Storage.Tests.Children;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Xunit.Abstractions;

namespace FermentWatch.Storage.Tests.Archives;

/// <summary>SIGKILL against an import, and exports of a folder that a kill left behind.</summary>
public sealed class ArchiveKillTests(ITestOutputHelper output) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Import_Killed_LeavesNothingOrAllAndTheNextTryOrStartFindsItWhole()
    {
        string first = Directory.CreateDirectory(_folder.File("first")).FullName;
        RandomHousehold.Make(first, 21);
        ForgetTimesOfNoCalendar(first);
        TemporaryFolder.Sql(Path.Combine(first, "readings.db"),
            "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 60000) "
            + "INSERT INTO reading SELECT 9, 1, i * 1000, i % 20, i, 1, 1, 1000000 + i FROM n");
        string zip = await Archived.ExportAsync(first, _folder.File("all.zip"));
        var random = new Random(20261201);
        int none = 0, whole = 0;
        for (int kill = 0; kill < TestLength.Of(reduced: 6, full: 40); kill++)
        {
            string place = _folder.File($"place{kill}");
            await KillAsync(zip, place, TimeSpan.FromMilliseconds(random.NextDouble() * 1800));
            var options = new StorageOptions { Folder = place };
            if (options.HasHousehold)
                whole++;
            else
            {
                none++;
                Assert.Empty(Archived.Import(zip, place).Kept);
            }
            await OpenAsync(options);
            string again = await Archived.ExportAsync(place, _folder.File("again.zip"));
            Assert.Equal(File.ReadAllBytes(zip), File.ReadAllBytes(again));
        }
        output.WriteLine($"killed while it was taken in: {none} times nothing was there, {whole} times all of it");
    }

    /// <summary>The moments that a kill seldom meets: whole, and nothing or the readings alone moved in.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Start_AfterAKillBetweenTheLastMoves_FinishesThem(bool readingsAreIn)
    {
        string first = Directory.CreateDirectory(_folder.File("first")).FullName, place = _folder.File("place");
        RandomHousehold.Make(first, 22);
        ForgetTimesOfNoCalendar(first);
        string zip = await Archived.ExportAsync(first, _folder.File("all.zip"));
        Assert.Empty(Archived.Import(zip, place).Kept);
        string ready = Directory.CreateDirectory(Path.Combine(place, "import.ready")).FullName;
        foreach (string file in readingsAreIn ? ["records.db"] : (string[])["records.db", "readings.db"])
            File.Move(Path.Combine(place, file), Path.Combine(ready, file));
        var options = new StorageOptions { Folder = place };
        Assert.True(options.HasHousehold);
        await OpenAsync(options);
        Assert.Equal(File.ReadAllBytes(zip), File.ReadAllBytes(await Archived.ExportAsync(place, _folder.File("again.zip"))));
        Assert.False(Directory.Exists(ready));
    }

    /// <summary>A journal holds what was written last, and a mark says that the service was killed: both are for the next start.</summary>
    [Fact]
    public async Task Export_OfAFolderThatAKillLeft_ReadsTheJournalAndLeavesEveryFileAsItIs()
    {
        string first = Directory.CreateDirectory(_folder.File("first")).FullName, left = Directory.CreateDirectory(_folder.File("left")).FullName;
        RandomHousehold.Make(first, 23);
        using (var connection = new SqliteConnection(DatabaseFile.ConnectionString(Path.Combine(first, "records.db"), SqliteOpenMode.ReadWrite,
            pooled: false)))
        {
            connection.Open();
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "PRAGMA user_version = 1; UPDATE household SET Name = 'Number Nine'";
            command.ExecuteNonQuery();
            foreach (string file in Directory.GetFiles(first))
                File.Copy(file, Path.Combine(left, Path.GetFileName(file)));
        }
        var before = Directory.GetFiles(left).Where(file => !file.EndsWith("-shm", StringComparison.Ordinal)).Order().ToDictionary(file => file,
            File.ReadAllBytes);
        Assert.Contains(before.Keys, file => file.EndsWith("records.db-wal", StringComparison.Ordinal));
        string zip = await Archived.ExportAsync(left, _folder.File("all.zip"));
        Assert.Contains("\"name\":\"Number Nine\"", Archived.Text(zip, "records/household.json"), StringComparison.Ordinal);
        Assert.Equal(before.Keys, Directory.GetFiles(left).Where(file => !file.EndsWith("-shm", StringComparison.Ordinal)).Order());
        Assert.All(before, file => Assert.Equal(file.Value, File.ReadAllBytes(file.Key)));
    }

    [Fact]
    public async Task Export_OfAFolderThatStandsStill_LeavesNoFileBeside()
    {
        RandomHousehold.Make(_folder.Root, 24);
        string[] before = [.. Directory.GetFiles(_folder.Root).Order()];
        await Archived.ExportAsync(_folder.Root, Path.Combine(Directory.CreateDirectory(_folder.File("out")).FullName, "all.zip"));
        Assert.Equal(before, Directory.GetFiles(_folder.Root).Order());
    }

    /// <summary>Whoever opens a log mends the verdicts of such.</summary>
    private static void ForgetTimesOfNoCalendar(string folder) => TemporaryFolder.Sql(Path.Combine(folder, "readings.db"),
        "DELETE FROM reading WHERE instant_ms NOT BETWEEN -1 AND 9000000000000");

    private static async Task OpenAsync(StorageOptions options)
    {
        await using ServiceProvider services = new ServiceCollection().AddLogging().AddSingleton(TimeProvider.System).AddFermentWatchStorage(options)
            .BuildServiceProvider();
        services.OpenStorage();
    }

    private static async Task KillAsync(string zip, string place, TimeSpan after)
    {
        using var child = ChildProcess.Start("import", zip, place);
        await Task.WhenAny(child.WaitForExitAsync(), Task.Delay(after, TimeProvider.System));
        child.Kill();
        await child.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
    }
}
