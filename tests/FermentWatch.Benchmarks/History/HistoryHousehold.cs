using System.Diagnostics;
using System.Globalization;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage;
using FermentWatch.Storage.Readings;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Benchmarks.History;

/// <summary>
/// A household whose log holds years. The rows are written past the door, as 31 million through it would take half an hour; the roll-ups are
/// those of the product's own upgrade and of the same sums.
/// </summary>
internal static class HistoryHousehold
{
    public static ServiceProvider Services(string folder) => new ServiceCollection().AddLogging().AddSingleton(TimeProvider.System)
        .AddFermentWatchStorage(new StorageOptions { Folder = folder }).BuildServiceProvider();

    public static async Task MakeAsync(string folder, MinuteReadings readings)
    {
        await using (ServiceProvider services = Services(folder))
        {
            services.OpenStorage();
            for (int number = 0; number < readings.Sensors; number++)
            {
                var place = new Place { Id = Guid.CreateVersion7(), Name = $"shelf {number}", ShelfOrder = number,
                    Typical = TypicalTemperature.Usual };
                await services.GetRequiredService<IPlaceBook>().AddAsync(place, default);
                var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = $"s{number}", Name = $"shelf {number}", AddedAt = readings.From };
                sensor.Placements.Add(
                    new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = place.Id, From = readings.From });
                await services.GetRequiredService<ISensorBook>().AddAsync(sensor, null, default);
            }
        }
        Fill(Path.Combine(folder, "readings.db"), readings);
        var watch = Stopwatch.StartNew();
        await using (ReadingStore.Open(Path.Combine(folder, "readings.db")))
            Console.WriteLine($"a log of the version before is brought up to date in {watch.Elapsed.TotalSeconds:F1} s");
    }

    private static void Fill(string path, MinuteReadings readings)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        Run(connection, "PRAGMA synchronous = OFF; PRAGMA journal_mode = OFF; PRAGMA cache_size = -400000;");
        using (SqliteTransaction transaction = connection.BeginTransaction())
        {
            using SqliteCommand insert = connection.CreateCommand();
            insert.CommandText = $"INSERT INTO reading VALUES($sensor, 1, $at, $value, $at, {(int)TimeSource.Payload}, {(int)Verdict.Counts}, $seq)";
            SqliteParameter key = insert.Parameters.Add("$sensor", SqliteType.Integer), at = insert.Parameters.Add("$at", SqliteType.Integer),
                value = insert.Parameters.Add("$value", SqliteType.Real), seq = insert.Parameters.Add("$seq", SqliteType.Integer);
            long written = 0;
            for (int sensor = 0; sensor < readings.Sensors; sensor++)
                for (int minute = 0; minute < readings.OfOne; minute++)
                {
                    (key.Value, at.Value, value.Value, seq.Value) = (sensor + 1, readings.UnixMilliseconds(minute),
                        MinuteReadings.Celsius(sensor, minute), ++written);
                    insert.ExecuteNonQuery();
                }
            transaction.Commit();
        }
        foreach (MeanSpan span in (MeanSpan[])[MeanSpan.QuarterHour, MeanSpan.Hour])
            Run(connection, string.Create(CultureInfo.InvariantCulture, $"""
                INSERT INTO mean SELECT {(int)span}, sensor, 1, instant_ms / {(int)span * 60_000} * {(int)span * 60_000},
                    avg(value), min(value), max(value), count(*), 1
                FROM reading GROUP BY sensor, instant_ms / {(int)span * 60_000}
                """));
        Run(connection, $"""
            INSERT INTO verdict_count SELECT sensor, {(int)Verdict.Counts}, {readings.OfOne} FROM (SELECT DISTINCT sensor FROM mean);
            INSERT INTO heard SELECT sensor, max(start_ms) FROM mean GROUP BY sensor;
            PRAGMA user_version = 3; PRAGMA journal_mode = WAL;
            """);
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandTimeout = 0;
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
