using FermentWatch.Kitchen.Forwarding;

namespace FermentWatch.Storage.Tests.Readings.Forwarding;

public sealed class ForwardCursorsTests : OpenedStore
{
    [Fact]
    public async Task MoveAsync_ThenARestart_EachSeriesHasItsOwnPlace()
    {
        await Store.ForwardCursors.MoveAsync(SeriesKind.Reading, 7, [], default);
        await Store.ForwardCursors.MoveAsync(SeriesKind.Reading, 9, [], default);
        await Store.ForwardCursors.MoveAsync(SeriesKind.Observation, 2, [], default);
        await RestartAsync();

        Assert.Equal(9, await Store.ForwardCursors.ReadAsync(SeriesKind.Reading, default));
        Assert.Equal(0, await Store.ForwardCursors.ReadAsync(SeriesKind.Estimate, default));
        Assert.Equal(2, await Store.ForwardCursors.ReadAsync(SeriesKind.Observation, default));
        Assert.Empty(await Store.ForwardCursors.LeftOutAsync(default));
    }

    [Fact]
    public async Task MoveAsync_WithWhatWasLeftOut_CountsByReasonAndKeepsTheLast()
    {
        NotForwarded first = new(NotForwardedReason.Refused, "a", "why", Make.Noon), second = first with { Example = "b" };
        NotForwarded other = first with { Reason = NotForwardedReason.UnknownOwner };
        await Store.ForwardCursors.MoveAsync(SeriesKind.Reading, 1, [first, second], default);
        await Store.ForwardCursors.MoveAsync(SeriesKind.Reading, 2, [other], default);
        await RestartAsync();

        Assert.Equal(
            [new NotForwardedCount(SeriesKind.Reading, second, 2), new NotForwardedCount(SeriesKind.Reading, other, 1)],
            await Store.ForwardCursors.LeftOutAsync(default));
    }
}
