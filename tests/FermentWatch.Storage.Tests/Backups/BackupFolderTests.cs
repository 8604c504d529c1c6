using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Backups;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Tests.Archives;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Storage.Tests.Backups;

public sealed class BackupFolderTests : IDisposable
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 10, 4, 12, 0);

    private readonly TemporaryFolder _folder = new();
    private string Home => _folder.File("home");

    private StorageOptions Household => new() { Folder = Home };

    private BackupFolder Backups => new(_folder.File("kept"));

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    /// <summary>A sensor is recorded, and only then its reading: whatever the moment, no reading may be of a sensor that is not there.</summary>
    [Fact]
    public async Task Make_WhileSensorsAreAddedAndReadingsComeIn_IsOnePairOfOneMomentTenTimesOfTen()
    {
        using var stop = new CancellationTokenSource();
        await OpenAsync(Home, async services =>
        {
            Task writing = Task.Run(() => WriteAsync(services, stop.Token));
            for (int i = 0; i < 10; i++)
            {
                Backup made = await Task.Run(() => Backups.Make(Household, Noon + Duration.FromSeconds(i)));
                AssertOneMoment(made.Folder);
            }
            await stop.CancelAsync();
            await writing;
            return true;
        });
        IReadOnlyList<Backup> all = Backups.All();
        Assert.Equal(10, all.Count);
        Assert.True(Count(all[^1].Folder, "readings.db", "reading") > Count(all[0].Folder, "readings.db", "reading"));
        foreach (Backup backup in all)
        {
            string place = _folder.File($"restored{backup.At.ToUnixTimeSeconds()}");
            Assert.Null(new HouseholdRestore(new StorageOptions { Folder = place }).Take(backup.Folder, replace: false, Noon));
            Assert.Equal(Rows(backup.Folder), Rows(place));
            Assert.Empty(await OpenAsync(place, services => Task.FromResult(services.GetRequiredService<StorageRemarks>().All)));
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Make_OfARandomHousehold_RestoresEveryRowOfEveryTableSecretsToo(int seed)
    {
        Directory.CreateDirectory(Home);
        RandomHousehold.Make(Home, seed);
        Backup made = Backups.Make(Household, Noon);
        Assert.Equal("fermentwatch-2026-10-04T120000Z", Path.GetFileName(made.Folder));
        Assert.Equal(["readings.db", "records.db"], Directory.GetFiles(made.Folder).Select(Path.GetFileName).Order());
        new HouseholdRestore(new StorageOptions { Folder = _folder.File("elsewhere") }).Take(made.Folder, replace: false, Noon);
        Assert.Equal(Rows(Home), Rows(_folder.File("elsewhere")));
    }

    [Fact]
    public async Task Make_OfADamagedFile_IsRefusedAndLeavesNoBackup()
    {
        await UsedAsync(Home, "counter");
        Damage(Path.Combine(Home, "readings.db"));
        var refused = Assert.Throws<DatabaseRefusedException>(() => Backups.Make(Household, Noon));
        Assert.Contains("readings.db was refused and left as it is: SQLite finds it damaged (", refused.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_folder.File("kept")));
    }

    [Fact]
    public async Task Keep_Three_ThrowsTheOldestAwayAndNothingThatIsNoBackup()
    {
        await UsedAsync(Home, "counter");
        for (int day = 0; day < 5; day++)
            Backups.Make(Household, Noon + Duration.FromDays(day));
        string letters = Directory.CreateDirectory(_folder.File("kept/fermentwatch-letters")).FullName;
        string left = Directory.CreateDirectory(_folder.File("kept/fermentwatch-2026-10-01T120000Z.draft")).FullName;
        Assert.Equal(2, Backups.Keep(3));
        Assert.Equal([6, 7, 8], Backups.All().Select(backup => backup.At.InUtc().Day));
        Assert.True(Directory.Exists(letters));
        Assert.False(Directory.Exists(left));
    }

    [Fact]
    public void Make_WhereThereIsNoHousehold_SaysSoAndMakesNothing()
    {
        var none = Assert.Throws<IOException>(() => Backups.Make(Household, Noon));
        Assert.Equal($"{Home} holds no household: records.db and readings.db are not both there.", none.Message);
        Assert.Empty(Directory.GetFileSystemEntries(_folder.Root));
    }

    [Fact]
    public async Task Take_OverAHousehold_IsRefusedUnlessItMayReplaceItAndThenPutsItAside()
    {
        await UsedAsync(Home, "counter");
        Backup made = Backups.Make(Household, Noon);
        await UsedAsync(Home, "cellar");
        IReadOnlyList<string> later = Rows(Home);
        var restore = new HouseholdRestore(Household);
        var refused = Assert.Throws<IOException>(() => restore.Take(made.Folder, replace: false, Noon));
        Assert.StartsWith($"{Home} holds a household already: nothing was changed. Say --replace,", refused.Message, StringComparison.Ordinal);
        Assert.Equal(later, Rows(Home));

        string? aside = restore.Take(made.Folder, replace: true, Noon);
        Assert.Equal(Path.Combine(Home, "before-restore-2026-10-04T120000Z"), aside);
        Assert.Equal(Rows(made.Folder), Rows(Home));
        Assert.Equal(later, Rows(aside!));
    }

    /// <summary>A kill may come after each move: whoever opens the folder next finishes the rest.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Start_AfterAKillBetweenTheMovesOfARestore_FinishesThemAndKeepsWhatWasThere(int movesDone)
    {
        await UsedAsync(Home, "counter");
        Backup made = Backups.Make(Household, Noon);
        await UsedAsync(Home, "cellar");
        IReadOnlyList<string> later = Rows(Home);
        string ready = Directory.CreateDirectory(Path.Combine(Home, "import.ready")).FullName, aside = Path.Combine(Home, "old");
        foreach (string file in new[] { "records.db", "readings.db" })
            File.Copy(Path.Combine(made.Folder, file), Path.Combine(ready, file));
        await File.WriteAllTextAsync(Path.Combine(ready, "aside"), "old");
        Directory.CreateDirectory(aside);
        (string From, string To)[] moves =
        [
            (Path.Combine(Home, "readings.db"), Path.Combine(aside, "readings.db")),
                (Path.Combine(ready, "readings.db"), Path.Combine(Home, "readings.db")),
            (Path.Combine(Home, "records.db"), Path.Combine(aside, "records.db")),
        ];
        foreach ((string from, string to) in moves.Take(movesDone))
            File.Move(from, to);
        await OpenAsync(Home, _ => Task.FromResult(true));
        Assert.Equal(Rows(made.Folder), Rows(Home));
        Assert.Equal(later, Rows(aside));
        Assert.False(Directory.Exists(ready));
    }

    [Theory]
    [InlineData("damaged", "SQLite finds it damaged (")]
    [InlineData("missing", "it is missing: a backup is a pair of files.")]
    [InlineData("empty", "the file is empty.")]
    [InlineData("stranger", "it belongs to other records than those in ")]
    [InlineData("newer", "it was written by a newer version of FermentWatch (tables 99, this one knows ")]
    public async Task Take_OfWhatIsNoWholePair_SaysWhyAndChangesNothing(string how, string words)
    {
        await UsedAsync(Home, "counter");
        await UsedAsync(_folder.File("other"), "shed");
        Backup made = Backups.Make(Household, Noon);
        string readings = Path.Combine(made.Folder, "readings.db");
        Action spoil = how switch
        {
            "damaged" => () => Damage(readings),
            "missing" => () => File.Delete(readings),
            "empty" => () => File.WriteAllBytes(readings, []),
            "stranger" => () => File.Copy(_folder.File("other/readings.db"), readings, overwrite: true),
            _ => () => TemporaryFolder.Sql(readings, "PRAGMA user_version = 99"),
        };
        spoil();
        IReadOnlyList<string> before = Rows(Home);
        var refused = Assert.Throws<DatabaseRefusedException>(() => new HouseholdRestore(Household).Take(made.Folder, replace: true, Noon));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, Rows(Home));
        Assert.Equal(["readings.db", "records.db"], Directory.GetFileSystemEntries(Home).Select(Path.GetFileName)
            .Where(name => name != "serving.lock").Order());
    }

    /// <summary>A file of one backup beside one of another: no sensor ever gets another's readings.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    public async Task Open_RecordsOfOneBackupWithReadingsOfAnother_GiveNoSensorTheReadingsOfAnother(int records, int readings)
    {
        await UsedAsync(Home, "counter");
        Backups.Make(Household, Noon);
        await UsedAsync(Home, "cellar");
        Backups.Make(Household, Noon + Duration.FromDays(1));
        IReadOnlyList<Backup> all = Backups.All();
        string mixed = Directory.CreateDirectory(_folder.File("mixed")).FullName;
        File.Copy(Path.Combine(all[records].Folder, "records.db"), Path.Combine(mixed, "records.db"));
        File.Copy(Path.Combine(all[readings].Folder, "readings.db"), Path.Combine(mixed, "readings.db"));
        Sensor added = await OpenAsync(mixed, services => services.GetRequiredService<ISensorBook>().AddAsync(Sensor("shed"), null, default));
        Assert.Equal(3, added.Key);
    }

    [Fact]
    public async Task Take_OfFilesThatWereCopiedWithTheirJournal_TakesWhatTheJournalHolds()
    {
        string copied = Directory.CreateDirectory(_folder.File("copied")).FullName;
        await OpenAsync(Home, async services =>
        {
            await WriteOneAsync(services, "counter");
            foreach (string file in Directory.GetFiles(Home).Where(file => !file.EndsWith("-shm", StringComparison.Ordinal)
                && !file.EndsWith(".lock", StringComparison.Ordinal)))
                File.Copy(file, Path.Combine(copied, Path.GetFileName(file)));
            return true;
        });
        string place = _folder.File("place");
        new HouseholdRestore(new StorageOptions { Folder = place }).Take(copied, replace: false, Noon);
        Assert.Equal(1, Count(place, "readings.db", "reading"));
        Assert.Equal(1, Count(place, "records.db", "sensor"));
    }

    private static async Task WriteAsync(IServiceProvider services, CancellationToken stop)
    {
        for (int i = 0; !stop.IsCancellationRequested; i++)
            await WriteOneAsync(services, $"sensor-{i}");
    }

    private static async Task WriteOneAsync(IServiceProvider services, string slug)
    {
        Sensor sensor = await services.GetRequiredService<ISensorBook>().AddAsync(Sensor(slug), null, default);
        await services.GetRequiredService<ReadingStore>()
            .AppendAsync([new Reading(sensor.Key, Quantity.Temperature, 19.5, Noon, Noon, TimeSource.Arrival)], default);
    }

    private static Task<bool> UsedAsync(string folder, string slug) => OpenAsync(folder, async services =>
    {
        await WriteOneAsync(services, slug);
        return true;
    });

    private static async Task<T> OpenAsync<T>(string folder, Func<IServiceProvider, Task<T>> use)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(TimeProvider.System);
        services.AddFermentWatchStorage(new StorageOptions { Folder = folder });
        await using ServiceProvider provider = services.BuildServiceProvider();
        provider.OpenStorage(asService: true);
        return await use(provider);
    }

    /// <summary>One after the other is written: the readings are as many as the sensors, or one fewer, or
    /// more by what came between the two.</summary>
    private static void AssertOneMoment(string backup)
    {
        long sensors = Count(backup, "records.db", "sensor"), readings = Count(backup, "readings.db", "reading");
        Assert.InRange(readings, sensors - 1, sensors + 3);
        Assert.Equal(readings, (long?)TemporaryFolder.Sql(Path.Combine(backup, "readings.db"), "SELECT coalesce(max(sensor), 0) FROM reading"));
    }

    private static long Count(string folder, string file, string table) =>
        (long)TemporaryFolder.Sql(Path.Combine(folder, file), $"SELECT count(*) FROM {table}")!;

    /// <summary>Every row of every table of both files as text; the marks of an open file are none of a household.</summary>
    private static List<string> Rows(string folder)
    {
        var rows = new List<string>();
        foreach (string file in new[] { "records.db", "readings.db" })
        {
            using var connection = new SqliteConnection(DatabaseFile.ConnectionString(Path.Combine(folder, file), SqliteOpenMode.ReadWrite,
                pooled: false));
            connection.Open();
            List<string> tables;
            using (var ask = new SqlStatement(connection,
                "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name"))
                tables = ask.Rows(row => row.GetString(0), default);
            foreach (string table in tables)
            {
                using var all = new SqlStatement(connection,
                    table == "state" ? "SELECT id, means_revision, pair FROM state" : $"SELECT * FROM \"{table}\"");
                rows.AddRange(all.Rows(row => $"{table}: {string.Join('|',
                    Enumerable.Range(0, row.FieldCount).Select(column => Text(row.GetValue(column))))}",
                    default).Order(StringComparer.Ordinal));
            }
        }
        return rows;
    }

    private static string? Text(object value) => value is byte[] bytes ? Convert.ToHexString(bytes)
        : Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture);

    private static void Damage(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite);
        for (long at = 4096; at < file.Length; at += 512)
        {
            file.Position = at;
            file.WriteByte(0xA5);
        }
    }

    private static Sensor Sensor(string slug) => new() { Id = Guid.CreateVersion7(), Slug = slug, Name = slug, AddedAt = Noon };
}
