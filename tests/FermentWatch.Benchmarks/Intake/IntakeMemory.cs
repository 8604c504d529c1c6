using System.Diagnostics;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded;
using FermentWatch.Storage.Readings;
using Microsoft.Extensions.Logging.Abstractions;

namespace FermentWatch.Benchmarks.Intake;

/// <summary>Resident memory of broker, door and log while millions of messages come in; publishers are in the same process.</summary>
internal static class IntakeMemory
{
    private const int Steps = 10;

    public static async Task RunAsync(int messages)
    {
        var book = new ManySensors();
        string folder = Directory.CreateTempSubdirectory("fermentwatch-bench-").FullName;
        try
        {
            await using ReadingStore store = ReadingStore.Open(Path.Combine(folder, "readings.db"));
            var door = new MessageDoor(store, new SensorDirectory(book, TimeProvider.System));
            await using var broker = new Broker(
                new BrokerOptions { Port = 0, MaxMessagesPerSecond = 0 }, book, door, TimeProvider.System, NullLogger<Broker>.Instance);
            await broker.StartAsync(CancellationToken.None);
            for (int step = 1; step <= Steps; step++)
            {
                LoadResult load = await Load.RunAsync(broker.Port!.Value, book.Password, messages / Steps);
                using Process self = Process.GetCurrentProcess();
                Console.WriteLine(
                    $"{door.Counts.Stored} stored, {load.PerSecond:F0}/s, resident {self.WorkingSet64 / 1e6:F0} MB, "
                    + $"managed {GC.GetTotalMemory(forceFullCollection: true) / 1e6:F1} MB");
            }
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }
}
