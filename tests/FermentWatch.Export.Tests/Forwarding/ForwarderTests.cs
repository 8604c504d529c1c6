using FermentWatch.Export.Forwarding;
using FermentWatch.Export.Receiving;
using FermentWatch.Export.Tests.Doubles;
using FermentWatch.Kitchen.Forwarding;
using Microsoft.Extensions.Time.Testing;
using NodaTime.Extensions;

namespace FermentWatch.Export.Tests.Forwarding;

/// <summary>Cursor, waits and refusals, against a receiver that forgets what it took less than 5 seconds ago when it is killed.</summary>
public partial class ForwarderTests
{
    private static readonly TimeSpan Settle = TimeSpan.FromSeconds(10);

    private readonly FakeTimeProvider _time = new(Make.Noon.ToDateTimeOffset());
    private readonly CursorsInMemory _cursors = new();
    private readonly PointLog _readings = new(SeriesKind.Reading), _observations = new(SeriesKind.Observation);
    private readonly ListLogger _log = new();
    private readonly ForgetfulReceiver _receiver;
    private Forwarder _forwarder;

    public ForwarderTests()
    {
        _receiver = new ForgetfulReceiver(_time, TimeSpan.FromSeconds(5));
        _forwarder = NewForwarder();
    }

    [Fact]
    public async Task RunAsync_NothingThere_AsksForNothing()
    {
        Assert.Null(await RunAsync());
        Assert.Empty(_receiver.Calls);
    }

    [Fact]
    public async Task RunAsync_PointsTaken_MoveTheCursorOnlyOnceTheReceiverHasLivedOn()
    {
        _readings.Add(1, 2);
        Assert.Equal(Settle, await RunAsync());
        Assert.Equal(0, _cursors[SeriesKind.Reading]);

        Assert.Null(await RunAfterAsync(Settle));

        Assert.Equal(2, _cursors[SeriesKind.Reading]);
        Assert.Equal([["Reading value=1 1", "Reading value=2 2"], ["Reading value=2 2"]], _receiver.Calls);
    }

    [Fact]
    public async Task RunAsync_NewPointsASettleTimeLater_ProveTheOlderOnes()
    {
        _readings.Add(1);
        await RunAsync();
        _readings.Add(2);
        Assert.Equal(Settle, await RunAfterAsync(Settle));
        Assert.Equal(1, _cursors[SeriesKind.Reading]);
        Assert.Equal(2, _receiver.Calls.Count);
    }

    [Fact]
    public async Task RunAsync_ReceiverKilledBetweenTwoWrites_SendsAgainWhatItForgot()
    {
        _readings.Add(1);
        await RunAsync();
        _receiver.KillAndStart();
        _readings.Add(2);
        await RunAfterAsync(TimeSpan.FromSeconds(1));
        Assert.Equal(["Reading value=2 2"], _receiver.Stored);

        await RunUntilDoneAsync();

        Assert.Equal(["Reading value=1 1", "Reading value=2 2"], _receiver.Stored);
        Assert.Equal(2, _cursors[SeriesKind.Reading]);
    }

    [Fact]
    public async Task RunAsync_KilledAgainAndAgainAtAnyMoment_LosesNothing()
    {
        // Every pattern of kills at whole seconds around the writes, three of them, none of them noticed by a failing call.
        for (int first = 0; first < 14; first++)
            for (int second = first; second < 28; second += 3)
                for (int third = second; third < 42; third += 5)
                    Assert.Equal(6, await StoredAfterKillsAsync(first, second, third));
    }

    [Fact]
    public async Task RunAsync_OwnRestart_BeginsAtTheCursor()
    {
        _readings.Add(1);
        await RunAsync();
        await RunAfterAsync(Settle);
        _readings.Add(2, 3);
        await RunAsync();

        _forwarder = NewForwarder();
        await RunAsync();

        Assert.Equal(["Reading value=2 2", "Reading value=3 3"], _receiver.Calls[^1]);
        Assert.Equal(1, _cursors[SeriesKind.Reading]);
    }

    [Fact]
    public async Task RunAsync_CursorBeyondTheEndOfTheLog_BeginsAtItsBeginning()
    {
        _cursors[SeriesKind.Reading] = 50;
        _readings.Add(1);
        await RunUntilDoneAsync();
        Assert.Equal(1, _cursors[SeriesKind.Reading]);
        Assert.Equal(["Reading value=1 1"], _receiver.Stored);
    }

    [Fact]
    public async Task RunAsync_ManyPoints_GoInBatches()
    {
        _readings.Add([.. Enumerable.Range(1, 4500).Select(value => (double)value)]);
        await RunUntilDoneAsync();
        Assert.Equal([2000, 2000, 500, 1], _receiver.Calls.Select(call => call.Count));
        Assert.Equal(4500, _cursors[SeriesKind.Reading]);
    }

    [Fact]
    public async Task RunAsync_ReceiverAway_WaitsLongerEachTimeAndSaysSoOnce()
    {
        _readings.Add(1);
        _receiver.Answer = _ => WriteOutcome.TryAgain("http://x could not be reached: gone");
        var waits = new List<double>();
        for (int attempt = 0; attempt < 9; attempt++)
            waits.Add((await RunAfterAsync(TimeSpan.FromSeconds(attempt == 0 ? 0 : waits[^1])))!.Value.TotalSeconds);
        Assert.Equal([10, 20, 40, 80, 160, 320, 640, 900, 900], waits);
        Assert.Equal(9, _receiver.Calls.Count);
        Assert.Equal("http://x could not be reached: gone", _forwarder.Trouble);

        // Woken too soon it does not even ask.
        Assert.Equal(TimeSpan.FromSeconds(899), await RunAfterAsync(TimeSpan.FromSeconds(1)));
        Assert.Equal(9, _receiver.Calls.Count);

        _receiver.Answer = _ => null;
        await RunAfterAsync(TimeSpan.FromSeconds(899));
        Assert.Null(_forwarder.Trouble);
        Assert.Equal(
            [
                "5001 Warning: Series are not passed on: http://x could not be reached: gone. They wait in our log, and it is tried again at "
                + "growing intervals.",
                "5002 Information: Series are passed on again.",
            ], _log.Lines);
    }

    [Fact]
    public async Task RunAsync_ReceiverAsksToBeLeftAlone_IsLeftAloneForThatLong()
    {
        _readings.Add(1);
        _receiver.Answer = _ => WriteOutcome.TryAgain("busy", TimeSpan.FromMinutes(5));
        Assert.Equal(TimeSpan.FromMinutes(5), await RunAsync());
        Assert.Equal(TimeSpan.FromMinutes(5), await RunAfterAsync(TimeSpan.FromMinutes(5)));
    }

    [Fact]
    public async Task RunAsync_FailureAfterPointsWereTaken_SendsThemAgain()
    {
        _readings.Add(1);
        await RunAsync();
        _readings.Add(2);
        _receiver.Answer = _ => WriteOutcome.TryAgain("gone");
        await RunAfterAsync(TimeSpan.FromSeconds(1));
        _receiver.Answer = _ => null;
        await RunAfterAsync(TimeSpan.FromSeconds(10));
        Assert.Equal(["Reading value=1 1", "Reading value=2 2"], _receiver.Calls[^1]);
    }

    [Fact]
    public async Task RunAsync_EntryWithoutAnOwner_IsCountedAndHoldsNothingUp()
    {
        _readings.Add(-1, 2, -3);
        await RunUntilDoneAsync();
        Assert.Equal(["-1", "-3"], _cursors.LeftOut.Select(each => each.Point.Example));
        Assert.All(_cursors.LeftOut, each => Assert.Equal(NotForwardedReason.UnknownOwner, each.Point.Reason));
        Assert.Equal((3, 1), (_cursors[SeriesKind.Reading], _receiver.Stored.Count()));
    }

    [Fact]
    public async Task RunAsync_OnlyEntriesWithoutAnOwner_NeedNoProof()
    {
        _readings.Add(-1);
        await RunUntilDoneAsync();
        Assert.Equal(1, _cursors[SeriesKind.Reading]);
        Assert.Empty(_receiver.Calls);
    }

    [Fact]
    public async Task RunAsync_NoConnectionIsEverKept_BelievesWhatWasTakenOftenEnough()
    {
        _receiver.KeepsNoConnection = true;
        _readings.Add(1);
        await RunUntilDoneAsync();
        Assert.Equal(1, _cursors[SeriesKind.Reading]);
        // Each taking is followed by one question.
        Assert.Equal(2 * SeriesProgress.TakenOftenEnough, _receiver.Calls.Count);
    }

    [Fact]
    public async Task RunAsync_Cancelled_ThrowsAndLosesNothing()
    {
        _readings.Add(1);
        _receiver.Answer = _ => throw new OperationCanceledException();
        await Assert.ThrowsAsync<OperationCanceledException>(() => RunAsync());
        _receiver.Answer = _ => null;
        await RunUntilDoneAsync();
        Assert.Equal(1, _cursors[SeriesKind.Reading]);
    }

    private async Task<int> StoredAfterKillsAsync(params int[] killsAtSecond)
    {
        var time = new FakeTimeProvider();
        var log = new PointLog(SeriesKind.Reading);
        var receiver = new ForgetfulReceiver(time, TimeSpan.FromSeconds(5));
        var cursors = new CursorsInMemory();
        var forwarder = new Forwarder([log], cursors, receiver, Settle, time, time.ToClock(), _log);
        for (int second = 0; second < 120; second++)
        {
            if (second % 7 == 0 && second < 42)
                log.Add(second);
            foreach (int _ in killsAtSecond.Where(kill => kill == second))
                receiver.KillAndStart();
            await forwarder.RunAsync(default);
            time.Advance(TimeSpan.FromSeconds(1));
        }
        receiver.KillAndStart();
        return cursors[SeriesKind.Reading] == 6 ? receiver.Stored.Count() : -1;
    }

    private Forwarder NewForwarder() => new([_readings, _observations], _cursors, _receiver, Settle, _time, _time.ToClock(), _log);

    private Task<TimeSpan?> RunAsync() => _forwarder.RunAsync(default);

    private Task<TimeSpan?> RunAfterAsync(TimeSpan wait)
    {
        _time.Advance(wait);
        return RunAsync();
    }

    /// <summary>Runs whenever the forwarder asks to be run, for at most a span, an hour by default.</summary>
    private async Task RunUntilDoneAsync(TimeSpan? atMost = null)
    {
        DateTimeOffset end = _time.GetUtcNow() + (atMost ?? TimeSpan.FromHours(1));
        while (await RunAsync() is { } wait && _time.GetUtcNow() < end)
            _time.Advance(wait);
    }
}
