using FermentWatch.Kitchen.Forwarding;
using NodaTime;

namespace FermentWatch.Storage.Tests.Readings.Forwarding;

public sealed class EstimateLogTests : OpenedStore
{
    private static readonly Guid First = Guid.CreateVersion7(), Second = Guid.CreateVersion7();

    [Fact]
    public async Task NoteAsync_ThenAfterAsync_GivesThemBackToTheLastBit()
    {
        SavedEstimate whole = Estimate(First, 0, "a"), open = Estimate(Second, 0, "b") with { DaysToTargetP50 = null, PhP50 = 0.1 + 0.2 };
        await Store.Estimates.NoteAsync([whole, open], default);
        await RestartAsync();

        var slice = await Store.Estimates.AfterAsync(0, 10, default);
        Assert.Equal([whole, open], slice.Entries);
        Assert.Equal((2, 2), (slice.Cursor, await Store.Estimates.EndAsync(default)));
        Assert.Equal(open, await Store.Estimates.NewestAsync(default));
    }

    [Fact]
    public async Task NoteAsync_TwoOfOneJarInOneMillisecond_TakeTheNextFreeOne()
    {
        await Store.Estimates.NoteAsync([Estimate(First, 0, "a"), Estimate(First, 0, "b"), Estimate(First, 1, "c"), Estimate(Second, 0, "d")],
            default);
        var slice = await Store.Estimates.AfterAsync(0, 10, default);
        Assert.Equal(
            [("a", 0), ("b", 1), ("c", 2), ("d", 0)],
            slice.Entries.Select(estimate => (estimate.Inputs, (int)(estimate.MadeAt - Make.Noon).TotalMilliseconds)));
    }

    [Fact]
    public async Task MoveAsync_Estimates_ForgetsWhatWasPassedOnButTheLastOfEachJar()
    {
        await Store.Estimates.NoteAsync([Estimate(First, 0, "a"), Estimate(First, 1, "b"), Estimate(Second, 0, "c"), Estimate(First, 2, "d")],
            default);
        await Store.ForwardCursors.MoveAsync(SeriesKind.Estimate, 3, [], default);

        Assert.Equal(["c", "d"], (await Store.Estimates.AfterAsync(0, 10, default)).Entries.Select(estimate => estimate.Inputs));
        Assert.Equal(["d"], (await Store.Estimates.AfterAsync(3, 10, default)).Entries.Select(estimate => estimate.Inputs));
        var last = await Store.Estimates.LastInputsAsync(default);
        Assert.Equal(("d", "c"), (last[First], last[Second]));
        await Store.Estimates.NoteAsync([Estimate(First, 3, "e")], default);
        Assert.Equal(5, await Store.Estimates.EndAsync(default));
    }

    private static SavedEstimate Estimate(Guid jar, int milliseconds, string inputs) =>
        new(jar, Make.Noon + Duration.FromMilliseconds(milliseconds), inputs)
        {
            PhP10 = 3.9, PhP50 = 4.1, PhP90 = 4.4, AcidityPercentLacticP50 = 0.81, SournessP50 = 61.5, DaysToTargetP50 = -1.25,
        };
}
