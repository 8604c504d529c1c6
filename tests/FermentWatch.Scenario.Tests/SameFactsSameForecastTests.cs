using CsCheck;
using FermentWatch.TestKit;

namespace FermentWatch.Scenario.Tests;

public class SameFactsSameForecastTests
{
    private static readonly Gen<History> Histories =
        from readings in Gen.Select(Gen.Int[0, (3 * 24 * 60) - 1], Gen.Double[5, 30]).List[0, 60]
        from measurements in Gen.Select(Gen.Int[1, 71], Gen.Double[3.6, 6.0]).List[0, 2]
        from move in Gen.Int[0, 71]
        select new History([.. readings.DistinctBy(reading => reading.Item1)], [.. measurements.DistinctBy(entry => entry.Item1)], move == 0 ? null
            : move);

    /// <summary>Shuffled, late, batched, restarted and corrected inputs give the same forecast to the last bit.</summary>
    [Fact]
    public async Task Forecast_ShuffledLateBatchedRestartedCorrected_IsTheSameToTheLastBit() =>
        await Gen.Select(Histories, Gen.Int[1, int.MaxValue]).SampleAsync(async (history, seed) =>
            Assert.Equal(await StraightAsync(history), await ByDetoursAsync(history, new Random(seed))),
            iter: LongRun.Count(4, 200), threads: 1);

    [Fact]
    public async Task Forecast_OneReadingMore_IsNotTheSame()
    {
        var history = new History([(60, 20.0), (1200, 21.0)], [], null);
        Assert.NotEqual(await StraightAsync(history), await StraightAsync(history with { Readings = [.. history.Readings, (2000, 9.0)] }));
    }

    private static async Task<string> StraightAsync(History history)
    {
        using var folder = new TemporaryFolder();
        await using var kitchen = new Kitchen(folder.Path);
        await History.PrepareAsync(kitchen);
        foreach (var fact in history.Facts())
            await fact(kitchen);
        await kitchen.PassAsync();
        return await kitchen.ForecastAsync();
    }

    private static async Task<string> ByDetoursAsync(History history, Random random)
    {
        using var folder = new TemporaryFolder();
        var kitchen = new Kitchen(folder.Path);
        await History.PrepareAsync(kitchen);
        Func<Kitchen, Task>[] facts = [.. history.Detours()];
        random.Shuffle(facts);
        int restartAt = random.Next(facts.Length + 1);
        for (int i = 0; i < facts.Length; i++)
        {
            if (i == restartAt)
            {
                await kitchen.DisposeAsync();
                kitchen = new Kitchen(folder.Path);
            }
            await facts[i](kitchen);
            if (random.Next(20) == 0)
                await kitchen.PassAsync();
        }
        await kitchen.PassAsync();
        string forecast = await kitchen.ForecastAsync();
        await kitchen.DisposeAsync();
        return forecast;
    }
}
