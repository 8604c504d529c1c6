using FermentWatch.Export.Receiving;
using FermentWatch.Kitchen.Forwarding;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace FermentWatch.Export.Forwarding;

/// <summary>Passes series on to the receiver, each from its own cursor. Safe to run again at any time; not by two at a time.</summary>
public sealed class Forwarder
{
    private readonly List<SeriesProgress> _progress;
    private readonly Retry _retry;
    private readonly ILogger<Forwarder> _logger;
    private readonly HashSet<(SeriesKind Series, NotForwardedReason Reason)> _told = [];
    private string? _unreachable;

    /// <param name="series">What is passed on.</param>
    /// <param name="cursors">Where it is kept how far that is.</param>
    /// <param name="receiver">Where it goes.</param>
    /// <param name="settleTime">See <see cref="InfluxOptions.SettleTime"/>.</param>
    /// <param name="time">For waits.</param>
    /// <param name="clock">For what is written down.</param>
    /// <param name="logger">Where changes of state go.</param>
    public Forwarder(
        IEnumerable<Series> series, IForwardCursors cursors, IPointReceiver receiver, TimeSpan settleTime,
        TimeProvider time, IClock clock, ILogger<Forwarder> logger)
    {
        _progress = [.. series.Select(each => new SeriesProgress(each, cursors, receiver, settleTime, time, clock))];
        _retry = new Retry(time);
        _logger = logger;
    }

    /// <summary>Why points wait, in one line; null when none do.</summary>
    public string? Trouble => _unreachable ?? _progress.Select(progress => progress.Held).FirstOrDefault(held => held is not null);

    /// <summary>
    /// Passes on what can be. Returns after how long there is something to do without anything new coming in; null if nothing is.
    /// </summary>
    /// <exception cref="IOException">Our own log or cursors could not be read or written; nothing is lost by that.</exception>
    public async Task<TimeSpan?> RunAsync(CancellationToken cancellationToken)
    {
        if (_retry.Left > TimeSpan.Zero)
            return _retry.Left;
        foreach (SeriesProgress progress in _progress)
        {
            WriteOutcome? trouble = await progress.RunAsync(cancellationToken);
            TellWhatWasLeftOut(progress);
            if (trouble is { Result: WriteResult.TryAgain })
            {
                GiveUpFor(trouble);
                return _retry.Left;
            }
            Hold(progress, trouble);
        }
        if (_unreachable is not null)
            ForwarderLog.Reached(_logger);
        _unreachable = null;
        _retry.Succeeded();
        return NextLook();
    }

    private TimeSpan? NextLook() =>
        _progress.SelectMany(progress => new[] { progress.UntilProof, progress.Held is null ? null : progress.Retry.Left }).Min();

    /// <summary>The receiver may have died and come back with less than it said it had: every series goes back to its cursor.</summary>
    private void GiveUpFor(WriteOutcome trouble)
    {
        _progress.ForEach(progress => progress.GoBack());
        _retry.Failed(trouble.NotBefore);
        if (_unreachable is null)
            ForwarderLog.Unreachable(_logger, trouble.Trouble!);
        _unreachable = trouble.Trouble;
    }

    private void Hold(SeriesProgress progress, WriteOutcome? refusal)
    {
        if (refusal is null && progress.Retry.Left > TimeSpan.Zero)
            return;
        if (refusal is null)
        {
            if (progress.Held is not null)
                ForwarderLog.Released(_logger, progress.Kind);
            progress.Held = null;
            progress.Retry.Succeeded();
            return;
        }
        if (progress.Held is null)
            ForwarderLog.Held(_logger, progress.Kind, refusal.Trouble!);
        progress.Held = refusal.Trouble;
        progress.Retry.Failed(refusal.NotBefore);
    }

    /// <summary>Told once for each series and reason; all of them are counted beside the cursor.</summary>
    private void TellWhatWasLeftOut(SeriesProgress progress)
    {
        foreach (NotForwarded point in progress.News.Where(point => _told.Add((progress.Kind, point.Reason))))
            ForwarderLog.LeftOut(_logger, progress.Kind, point.Reason, point.Example, point.Explanation);
        progress.News.Clear();
    }
}
