using CsCheck;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Tests.Readings;

/// <summary>However the same readings arrive, the tables end the same to the last bit; only the order of writing differs.</summary>
public class OrderIndependenceTests
{
    private static readonly Gen<double> Value = Gen.Frequency(
        (8, Gen.Double[15, 25]), (1, Gen.Double[26, 48]), (1, Gen.Const(85.0)), (1, Gen.Const(-127.0)), (1, Gen.Const(1e15)));

    private static readonly Gen<Reading[]> History =
        Gen.Select(Gen.Int[1, 2], Gen.Int[0, 7200], Value, (sensor, second, value) => Make.Timed(second, value, sensor)).Array[1, 120]
            .Select(readings => readings.DistinctBy(reading => (reading.SensorKey, reading.MeasuredAt)).ToArray());

    private enum Then
    {
        Nothing,
        Judge,
        Restart,
    }

    private static readonly Gen<(Reading[] History, Reading[] Arrival, (int Size, Then Then)[] Batches)> Case =
        from history in History
        from again in Gen.Shuffle(history, 0, history.Length)
        from arrival in Gen.Shuffle(history.Concat(again).ToArray())
        from batches in Gen.Select(Gen.Int[1, 60], Gen.Int[0, 2].Select(then => (Then)then)).Array[1, 8]
        select (history, arrival, batches);

    [Fact]
    public async Task AppendAndJudge_ShuffledBatchedRepeatedRestarted_TablesAreTheSame() =>
        await Case.SampleAsync(
            async made => Assert.Equal(await AtOnceAsync(made.History), await PiecemealAsync(made.Arrival, made.Batches)),
            iter: TestLength.Of(reduced: 40, full: 1000), threads: 2);

    private static async Task<string[]> AtOnceAsync(Reading[] history)
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("readings.db");
        await using var store = ReadingStore.Open(path);
        await store.AppendAsync([.. history.OrderBy(reading => reading.MeasuredAt)], default);
        await new JudgingPass(store.Log).RunAsync(default);
        return Tables(path);
    }

    private static async Task<string[]> PiecemealAsync(Reading[] arrival, (int Size, Then Then)[] batches)
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("readings.db");
        var store = ReadingStore.Open(path);
        int sent = 0;
        for (int batch = 0; sent < arrival.Length; batch++)
        {
            var (size, then) = batches[batch % batches.Length];
            var group = arrival.Skip(sent).Take(size).ToList();
            sent += group.Count;
            await store.AppendAsync(group, default);
            if (then == Then.Judge)
                await new JudgingPass(store.Log).RunAsync(default);
            if (then == Then.Restart)
            {
                await store.DisposeAsync();
                store = ReadingStore.Open(path);
            }
        }

        await new JudgingPass(store.Log).RunAsync(default);
        await store.DisposeAsync();
        return Tables(path);
    }

    private static string[] Tables(string path)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        return
        [
            .. Rows(connection, "SELECT 'reading', sensor, quantity, instant_ms, value, received_ms, time_source, verdict FROM reading ORDER BY "
                + "2, 3, 4"),
            .. Rows(connection, "SELECT 'mean', span, sensor, quantity, start_ms, value, minimum, maximum, count FROM mean ORDER BY 2, 3, 4, 5"),
            .. Rows(connection, "SELECT 'verdicts', * FROM verdict_count WHERE count <> 0 ORDER BY 2, 3"),
            .. Rows(connection, "SELECT 'counted', sensor, verdict, count(*) FROM reading GROUP BY 2, 3 ORDER BY 2, 3"),
            .. Rows(connection, "SELECT 'waiting', count(*) FROM reading WHERE verdict = 0"),
        ];
    }

    private static IEnumerable<string> Rows(SqliteConnection connection, string sql)
    {
        using var command = new SqliteCommand(sql, connection);
        using var reader = command.ExecuteReader();
        while (reader.Read())
            yield return string.Join(' ', Enumerable.Range(0, reader.FieldCount).Select(column => reader.GetValue(column) switch
            {
                double number => BitConverter.DoubleToInt64Bits(number).ToString("x16"),
                var other => other.ToString(),
            }));
    }
}
