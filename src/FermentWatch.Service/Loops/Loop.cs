using System.Threading.Channels;
using FermentWatch.Kitchen.Health;
using FermentWatch.Storage;
using NodaTime;

namespace FermentWatch.Service.Loops;

/// <summary>
/// A thin loop around one pass: it wakes at least every minute, and whenever somebody wakes it, and asks the pass what is due.
/// A pass that fails is logged once per change of state and tried again at the next waking.
/// </summary>
/// <param name="name">Its name in the log, in health and in metrics.</param>
/// <param name="pass">What it does; safe to run again at any time.</param>
/// <param name="time">The clock.</param>
/// <param name="logger">Where changes of state go.</param>
public sealed class Loop(string name, Func<Instant, CancellationToken, Task> pass, TimeProvider time, ILogger<Loop> logger) : BackgroundService
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);
    private static readonly StorageTrouble Disk = new();

    private readonly Channel<TaskCompletionSource?> _wakings = Channel.CreateUnbounded<TaskCompletionSource?>();

    private int _asked;

    public string Name => name;

    /// <summary>What it says of itself, for health.</summary>
    public LoopSigns Signs => new(name, LastPass, LastSign, Trouble, FailingSince);

    /// <summary>When the last pass that went well began; null before the first.</summary>
    public Instant? LastPass { get; private set; }

    /// <summary>What the last pass failed with; null when it went well.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Since when passes have failed; null when the last went well.</summary>
    public Instant? FailingSince { get; private set; }

    /// <summary>When the pass that is running began; null between two.</summary>
    public Instant? RunningSince { get; private set; }

    /// <summary>Passes that have ended, well or not.</summary>
    public long Passes { get; private set; }

    /// <summary>Passes that failed.</summary>
    public long Failures { get; private set; }

    /// <summary>How long the last pass took, by the machine's clock; zero before the first.</summary>
    public TimeSpan LastTook { get; private set; }

    /// <summary>When it was last seen alive: at the beginning, at a step or at the end of a pass, well or not; null before the first.</summary>
    public Instant? LastSign { get; private set; }

    /// <summary>Says that the pass under way goes on.</summary>
    public void Step() => LastSign = Instant.FromDateTimeOffset(time.GetUtcNow());

    /// <summary>Asks for a pass soon; costs nothing if one is asked for already.</summary>
    public void Wake()
    {
        if (Interlocked.Exchange(ref _asked, 1) == 0)
            _wakings.Writer.TryWrite(null);
    }

    /// <summary>Asks for a pass and completes when one that began after this call has ended, well or not.</summary>
    public Task WakeAndWaitAsync(CancellationToken cancellationToken)
    {
        var waiter = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        return _wakings.Writer.TryWrite(waiter) ? waiter.Task.WaitAsync(cancellationToken) : Task.CompletedTask;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using ITimer timer = time.CreateTimer(_ => Wake(), null, TimeSpan.Zero, Patience);
        var waiters = new List<TaskCompletionSource>();
        try
        {
            while (await _wakings.Reader.WaitToReadAsync(stoppingToken))
            {
                while (_wakings.Reader.TryRead(out TaskCompletionSource? waiter))
                    if (waiter is not null)
                        waiters.Add(waiter);
                // Only after the wakings are taken: one that comes between would be taken with them and keep every later one from being written.
                Interlocked.Exchange(ref _asked, 0);
                await RunOnceAsync(stoppingToken);
                waiters.ForEach(waiter => waiter.TrySetResult());
                waiters.Clear();
            }
        }
        finally
        {
            _wakings.Writer.TryComplete();
            while (_wakings.Reader.TryRead(out TaskCompletionSource? waiter))
                waiter?.TrySetResult();
            waiters.ForEach(waiter => waiter.TrySetResult());
        }
    }

    private async Task RunOnceAsync(CancellationToken stoppingToken)
    {
        Instant now = Instant.FromDateTimeOffset(time.GetUtcNow());
        (RunningSince, LastSign) = (now, now);
        long begun = TimeProvider.System.GetTimestamp();
        try
        {
            await pass(now, stoppingToken);
            if (Trouble is not null)
                LoopLog.Recovered(logger, name);
            (Trouble, FailingSince) = (null, null);
            LastPass = now;
        }
        catch (Exception trouble) when (trouble is not OperationCanceledException || !stoppingToken.IsCancellationRequested)
        {
            // Whatever it was, the loop must live to try again; the reason is kept for the health page.
            Failures++;
            if (Trouble is null)
                LoopLog.Failed(logger, name, trouble);
            (Trouble, FailingSince) = (Disk.WordsOf(trouble) ?? trouble.Message.ReplaceLineEndings(" "), FailingSince ?? now);
        }
        finally
        {
            (RunningSince, LastSign) = (null, Instant.FromDateTimeOffset(time.GetUtcNow()));
            (Passes, LastTook) = (Passes + 1, TimeProvider.System.GetElapsedTime(begun));
        }
    }
}

internal static partial class LoopLog
{
    [LoggerMessage(3001, LogLevel.Error, "The {Loop} loop failed and will be tried again every minute.")]
    public static partial void Failed(ILogger logger, string loop, Exception exception);

    [LoggerMessage(3002, LogLevel.Information, "The {Loop} loop runs well again.")]
    public static partial void Recovered(ILogger logger, string loop);

    [LoggerMessage(3003, LogLevel.Warning,
        "{Count} readings could not be judged since the start and are set aside; the last is {Quantity} of the sensor with key {SensorKey}, "
        + "measured {MeasuredAt}: {Reason}")]
    public static partial void SetAside(ILogger logger, long count, int sensorKey, Kitchen.Readings.Quantity quantity, NodaTime.Instant measuredAt,
        string reason);
}
