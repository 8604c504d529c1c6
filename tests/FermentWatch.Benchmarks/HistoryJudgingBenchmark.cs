using System.Diagnostics;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Tests.Judging.Reference;
using FermentWatch.Storage.Readings;
using NodaTime;

namespace FermentWatch.Benchmarks;

/// <summary>
/// What judging half an hour of a fast sensor costs: the sliding window as a ratio to gathering every reading's neighbours anew, with
/// the same verdicts; and through the store, with how long another sensor's reading waits behind it.
/// </summary>
internal static class HistoryJudgingBenchmark
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 4, 8, 0);
    private static readonly PlausibleRange Range = MeasuredQuantity.Of(Quantity.Temperature).Range;

    public static async Task RunAsync()
    {
        foreach (int hertz in (int[])[1, 10, 50])
        {
            List<Reading> readings = History(hertz);
            var watch = Stopwatch.StartNew();
            Verdict[] sliding = [.. ReadingJudge.Judge(readings, 0, readings.Count, Range)];
            double slidingSeconds = watch.Elapsed.TotalSeconds;
            Console.WriteLine($"{hertz} Hz for 30 minutes, {readings.Count} readings, {sliding.Count(verdict => verdict == Verdict.Jump)} jumps: "
                + $"sliding window {slidingSeconds:F3} s");
            if (hertz <= 10)
            {
                watch.Restart();
                Verdict[] oneByOne = [.. JudgedOneByOne.Judge(readings, 0, readings.Count, Range)];
                double seconds = watch.Elapsed.TotalSeconds;
                Console.WriteLine($"  neighbours gathered anew {seconds:F3} s, {seconds / slidingSeconds:F0} times as long; verdicts the same: "
                    + $"{oneByOne.SequenceEqual(sliding)}");
            }
            await ThroughTheStoreAsync(hertz, readings);
        }
    }

    private static async Task ThroughTheStoreAsync(int hertz, List<Reading> readings)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-bench-");
        try
        {
            await using ReadingStore store = ReadingStore.Open(Path.Combine(folder.FullName, "readings.db"));
            foreach (Reading[] pack in readings.Chunk(500))
                await store.AppendAsync(pack, default);
            await store.AppendAsync([new Reading(2, Quantity.Temperature, 19, Start, Start, TimeSource.Payload)], default);
            var watch = Stopwatch.StartNew();
            Task pass = new JudgingPass(store.Log).RunAsync(default);
            while ((await store.Log.LastAsync(2, default))[0].Verdict == Verdict.Pending)
                await Task.Delay(TimeSpan.FromMilliseconds(2), TimeProvider.System);
            double other = watch.Elapsed.TotalSeconds;
            await pass;
            Console.WriteLine($"  through the store, {hertz} Hz: all judged after {watch.Elapsed.TotalSeconds:F2} s, another sensor's reading "
                + $"behind it after {other:F2} s");
        }
        finally
        {
            folder.Delete(true);
        }
    }

    /// <summary>A noisy sensor with a spike now and then, so that jumps are weighed and not only passed over.</summary>
    private static List<Reading> History(int hertz)
    {
        var random = new Random(11);
        return [.. Enumerable.Range(0, hertz * 1800).Select(index =>
        {
            double value = 19 + random.NextDouble() + (random.Next(50) == 0 ? random.Next(-8, 9) : 0);
            return new Reading(1, Quantity.Temperature, value, Start + (Duration.FromMilliseconds(1000) * index / hertz),
                Start + Duration.FromHours(1), TimeSource.Payload);
        })];
    }
}
