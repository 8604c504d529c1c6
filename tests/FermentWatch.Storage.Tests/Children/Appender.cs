using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Tests.Readings;

namespace FermentWatch.Storage.Tests.Children;

/// <summary>
/// Appends until it is killed: one loop for each start index, each group one timed and one bare reading of one index. Prints the
/// index of each group after it was acknowledged.
/// </summary>
internal static class Appender
{
    internal static int BareSensor(int worker) => 100 + worker;

    internal static double Value(int worker, int index) => index + (worker / 8.0);

    internal static async Task RunAsync(string path, int[] starts)
    {
        await using var store = ReadingStore.Open(path);
        await Task.WhenAll(starts.Select((start, worker) => Task.Run(() => AppendAsync(store, worker, start))));
    }

    internal static Reading Timed(int worker, int index) => Make.Timed(index, Value(worker, index), worker);

    private static async Task AppendAsync(ReadingStore store, int worker, int start)
    {
        for (int index = start; ; index++)
        {
            // Eight bare readings arrive in each millisecond, so that they have to make room for each other.
            Reading[] group = [Timed(worker, index), Make.Bare(index / 8 / 1000.0, Value(worker, index), BareSensor(worker))];
            await store.AppendAsync(group, default);
            Console.Out.WriteLine($"{worker} {index}");
        }
    }
}
