using FermentWatch.Export.Receiving;
using FermentWatch.Kitchen.Forwarding;

namespace FermentWatch.Export.Tests.Forwarding;

public partial class ForwarderTests
{
    [Fact]
    public async Task RunAsync_OnePoisonousPoint_IsLeftOutAndCountedOnceAndTheOthersArrive()
    {
        _readings.Add([.. Enumerable.Range(1, 100).Select(value => (double)value)]);
        Refuse("Reading value=37 37");
        await RunAsync();
        Assert.Empty(_cursors.LeftOut);
        // Sent again after a kill and refused again: still one.
        _receiver.KillAndStart();
        await RunUntilDoneAsync();

        Assert.Equal(99, _receiver.Stored.Count());
        Assert.Equal(100, _cursors[SeriesKind.Reading]);
        (SeriesKind series, NotForwarded point) = Assert.Single(_cursors.LeftOut);
        Assert.Equal((SeriesKind.Reading, NotForwardedReason.Refused, "Reading value=37 37", "no"),
            (series, point.Reason, point.Example, point.Explanation));
        Assert.Equal(["5005 Warning: A point of the series Reading was left out, reason Refused: 'Reading value=37 37'. no. Further ones are "
            + "counted only."], _log.Lines);
    }

    [Fact]
    public async Task RunAsync_NewestPointIsThePoisonousOne_WaitsForANewerOneThatTellsItApart()
    {
        _readings.Add(1, 2, 3);
        Refuse("Reading value=3 3");
        _observations.Add(7);
        await RunUntilDoneAsync(TimeSpan.FromMinutes(30));
        Assert.Equal((0, 1), (_cursors[SeriesKind.Reading], _cursors[SeriesKind.Observation]));
        Assert.Equal("no", _forwarder.Trouble);

        _readings.Add(4);
        await RunUntilDoneAsync(TimeSpan.FromMinutes(30));

        Assert.Equal(4, _cursors[SeriesKind.Reading]);
        Assert.Equal("Reading value=3 3", Assert.Single(_cursors.LeftOut).Point.Example);
        Assert.Null(_forwarder.Trouble);
        Assert.Equal(["5003", "5004", "5005"], _log.Lines.Select(line => line[..4]));
    }

    [Fact]
    public async Task RunAsync_ReceiverThatRefusesEverything_LosesNothing()
    {
        _readings.Add(1, 2, 3);
        _receiver.Answer = _ => WriteOutcome.Refused("unsupported path");
        await RunUntilDoneAsync(TimeSpan.FromHours(3));
        Assert.Empty(_cursors.LeftOut);
        Assert.Equal(0, _cursors[SeriesKind.Reading]);
        Assert.InRange(_receiver.Calls.Count, 1, 60);

        _receiver.Answer = _ => null;
        await RunUntilDoneAsync(TimeSpan.FromMinutes(30));
        Assert.Equal(3, _receiver.Stored.Count());
    }

    [Fact]
    public async Task RunAsync_BatchTooLargeForTheReceiver_GoesInParts()
    {
        _readings.Add([.. Enumerable.Range(1, 1000).Select(value => (double)value)]);
        _receiver.Answer = lines => lines.Count > 300 ? WriteOutcome.Refused("413") : null;
        await RunUntilDoneAsync();
        Assert.Equal(1000, _receiver.Stored.Count());
        Assert.Empty(_cursors.LeftOut);
    }

    [Fact]
    public async Task RunAsync_KilledWhileABatchIsParted_SendsTheTakenPartAgain()
    {
        _readings.Add([.. Enumerable.Range(1, 8).Select(value => (double)value)]);
        bool killed = false;
        _receiver.Answer = lines =>
        {
            if (lines.Contains("Reading value=8 8") && lines.Count == 4 && !killed)
            {
                killed = true;
                _receiver.KillAndStart();
            }
            return lines.Contains("Reading value=6 6") ? WriteOutcome.Refused("no") : null;
        };
        await RunUntilDoneAsync();
        Assert.True(killed);
        Assert.Equal(7, _receiver.Stored.Count());
        Assert.Single(_cursors.LeftOut);
    }

    private void Refuse(string line) =>
        _receiver.Answer = lines => lines.Contains(line) ? WriteOutcome.Refused("no") : null;
}
