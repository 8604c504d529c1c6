using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Tests.Readings;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Storage.Tests;

public sealed class DatabasePairTests : IDisposable
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 10, 4, 12, 0);

    private readonly TemporaryFolder _folder = new();

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    [Theory]
    [InlineData("records.db", "readings.db was refused and left as it is: the records that belong to it are missing. Put ")]
    [InlineData("readings.db", "records.db was refused and left as it is: the readings that belong to it are missing. Put ")]
    public async Task Open_HalfOfAPairThatHoldsSomething_IsRefusedWithTheTwoWaysOn(string lost, string words)
    {
        await UsedAsync(_folder.Root);
        File.Delete(_folder.File(lost));
        var refused = await Assert.ThrowsAsync<DatabaseRefusedException>(() => OpenAsync(_folder.Root));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
        Assert.Contains("restore both files from one backup. To start anew, move both files away.", refused.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(_folder.File(lost)));
    }

    [Theory]
    [InlineData("records.db")]
    [InlineData("readings.db")]
    public async Task Open_HalfOfAPairThatHoldsNothing_IsCompleted(string lost)
    {
        await OpenAsync(_folder.Root);
        File.Delete(_folder.File(lost));
        await OpenAsync(_folder.Root);
        await UsedAsync(_folder.Root);
    }

    [Fact]
    public async Task Open_ReadingsOfAnotherHousehold_AreRefused()
    {
        using var other = new TemporaryFolder();
        await UsedAsync(_folder.Root);
        await UsedAsync(other.Root);
        File.Copy(other.File("readings.db"), _folder.File("readings.db"), overwrite: true);
        var refused = await Assert.ThrowsAsync<DatabaseRefusedException>(() => OpenAsync(_folder.Root));
        Assert.Contains("readings.db was refused and left as it is: it belongs to other records than those in ", refused.Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_PairOfTheFirstVersion_IsJoinedAndKeepsItsReadingsButNoMeansThatNobodyReads()
    {
        await UsedAsync(_folder.Root);
        TemporaryFolder.Sql(_folder.File("readings.db"), ReadingFileTests.BackToTheFirstVersion);
        TemporaryFolder.Sql(_folder.File("readings.db"),
            "INSERT INTO mean VALUES(1, 1, 1, 0, 18, 18, 18, 1), (15, 1, 1, 0, 18, 18, 18, 1), (60, 1, 1, 0, 18, 18, 18, 1)");
        await OpenAsync(_folder.Root);
        Assert.Equal(1L, TemporaryFolder.Sql(_folder.File("readings.db"), "SELECT count(*) FROM reading"));
        Assert.Equal("15,60,360,1440",
            TemporaryFolder.Sql(_folder.File("readings.db"), "SELECT group_concat(span ORDER BY span) FROM mean WHERE start_ms = 0"));
        Assert.Equal(TemporaryFolder.Sql(_folder.File("records.db"), "SELECT Id FROM household"),
            TemporaryFolder.Sql(_folder.File("readings.db"), "SELECT pair FROM state"));
        Assert.Equal(4L, TemporaryFolder.Sql(_folder.File("readings.db"), "PRAGMA user_version"));
    }

    [Fact]
    public async Task AddAsync_RecordsOfAnOlderBackup_GivesNoKeyUnderWhichSomethingIsFiled()
    {
        await OpenAsync(_folder.Root);
        byte[] older = await File.ReadAllBytesAsync(_folder.File("records.db"));
        await UsedAsync(_folder.Root);
        await File.WriteAllBytesAsync(_folder.File("records.db"), older);
        Sensor added = await OpenAsync(_folder.Root, services => services.GetRequiredService<ISensorBook>().AddAsync(Sensor("later"), null, default));
        Assert.Equal(2, added.Key);
    }

    [Fact]
    public async Task Dispose_OfTheService_LeavesTwoFilesAndNoJournal()
    {
        await UsedAsync(_folder.Root);
        Assert.Equal(["readings.db", "records.db"], Directory.GetFiles(_folder.Root).Select(Path.GetFileName).Order());
    }

    [Fact]
    public async Task Open_JournalRemovedAfterAKill_IsSaid()
    {
        await UsedAsync(_folder.Root);
        await OpenAsync(_folder.Root, services =>
        {
            // What a kill leaves and somebody then tidied up.
            using var left = new TemporaryFolder();
            foreach (string file in new[] { "records.db", "readings.db" })
                File.Copy(_folder.File(file), left.File(file));
            IReadOnlyList<string> remarks = OpenAsync(left.Root, opened => Task.FromResult(opened.GetRequiredService<StorageRemarks>().All))
                .GetAwaiter().GetResult();
            Assert.Equal(2, remarks.Count);
            Assert.StartsWith("readings.db was not closed when the service last ended, and its journal readings.db-wal is gone", remarks[0],
                StringComparison.Ordinal);
            return Task.FromResult(true);
        });
        Assert.Empty(await OpenAsync(_folder.Root, services => Task.FromResult(services.GetRequiredService<StorageRemarks>().All)));
    }

    private static Task<bool> UsedAsync(string folder) => OpenAsync(folder, async services =>
    {
        Sensor sensor = await services.GetRequiredService<ISensorBook>().AddAsync(Sensor("counter"), null, default);
        await services.GetRequiredService<ReadingStore>()
            .AppendAsync([new Reading(sensor.Key, Quantity.Temperature, 19.5, Noon, Noon, TimeSource.Arrival)], default);
        return true;
    });

    private static Task<bool> OpenAsync(string folder) => OpenAsync(folder, _ => Task.FromResult(true));

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

    private static Sensor Sensor(string slug) => new() { Id = Guid.CreateVersion7(), Slug = slug, Name = slug, AddedAt = Noon };
}
