using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace FermentWatch.Storage.Tests.Readings;

/// <summary>A log into which times came that nothing can be computed with, from before the door refused them.</summary>
public class TimesBeyondJudgingTests
{
    private static readonly Instant LastSecond = Instant.FromUnixTimeSeconds(253_402_300_799);

    [Fact]
    public async Task Open_RowsNoCalendarCanName_GetTheirVerdictAndStopNoPass()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("readings.db");
        await using (var store = ReadingStore.Open(path))
            await store.AppendAsync([Make.Timed(0, 20), Make.Timed(1, 20) with { MeasuredAt = LastSecond }], default);
        Execute(path,
            """
            INSERT INTO reading VALUES(1, 1, 9223372036854775807, 20, 0, 2, 0, 101), (1, 1, -9223372036854775808, 20, 9223372036854775807, 2, 1, 102);
            UPDATE verdict_count SET count = count + 1 WHERE sensor = 1 AND verdict = 0;
            INSERT INTO verdict_count VALUES(1, 1, 1);
            """);

        await using (var store = ReadingStore.Open(path))
        {
            var pass = new JudgingPass(store.Log);
            await pass.RunAsync(default);
            Assert.Empty(pass.SetAside.Last);
            Assert.Equal([Make.Timed(0, 20)], (await store.Log.LastAsync(1, default)).Select(last => last.Reading));
            var counts = await store.Log.VerdictCountsAsync(1, default);
            Assert.Equal((1L, 3L, 0L), (counts[Verdict.Counts], counts[Verdict.ClockNotBelieved], counts.GetValueOrDefault(Verdict.Pending)));
        }
        Assert.Equal(["1 7", "1 7", "1 1", "1 7"],
            Rows(path, "SELECT sensor || ' ' || verdict FROM reading WHERE quantity = 1 ORDER BY instant_ms DESC"));
    }

    [Fact]
    public async Task Open_TablesFromBefore_KnowWhenEachSensorWasHeardAndWhatWaits()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("readings.db");
        await using (var store = ReadingStore.Open(path))
            await store.AppendAsync([Make.Timed(0, 20), Make.Timed(60, 21), Make.Timed(30, 19, 2)], default);
        Execute(path, ReadingFileTests.BackToTheFirstVersion);

        await using var opened = ReadingStore.Open(path);
        Assert.Equal(Make.Timed(60, 21).ReceivedAt, await opened.Log.LastHeardAsync(1, default));
        Assert.Equal([1, 2], (await opened.Log.WaitingAsync(default)).Select(waiting => waiting.SensorKey));
    }

    [Fact]
    public async Task LastHeardAsync_OneReadingOfTenYearsAhead_GoesByWhenReadingsCame()
    {
        using var folder = new TemporaryFolder();
        await using var store = ReadingStore.Open(folder.File("readings.db"));
        Reading ahead = Make.Timed(0, 20) with { MeasuredAt = Make.Noon + Duration.FromDays(3653) };
        await store.AppendAsync([ahead], default);
        Assert.Equal([ahead], (await store.Log.LastAsync(1, default)).Select(last => last.Reading));

        Reading next = Make.Timed(3600, 21) with { ReceivedAt = Make.Noon + Duration.FromHours(1) };
        await store.AppendAsync([next], default);
        Assert.Equal(next.ReceivedAt, await store.Log.LastHeardAsync(1, default));
        Assert.Equal([next], (await store.Log.LastAsync(1, default)).Select(last => last.Reading));
        Assert.Null(await store.Log.LastHeardAsync(2, default));
    }

    private static void Execute(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var command = new SqliteCommand(sql, connection);
        command.ExecuteNonQuery();
    }

    private static List<string> Rows(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var command = new SqliteCommand(sql, connection);
        using var reader = command.ExecuteReader();
        var rows = new List<string>();
        while (reader.Read())
            rows.Add(reader.GetString(0));
        return rows;
    }
}
