namespace FermentWatch.Intake.Outside;

/// <summary>What the link to an outside broker went through since the service started.</summary>
public sealed class LinkCounts
{
    private long _attempts;
    private long _connects;
    private long _acknowledged;
    private long _failures;

    /// <summary>Tries to connect.</summary>
    public long Attempts => Interlocked.Read(ref _attempts);

    /// <summary>Tries that led to a connection with our subscriptions in place.</summary>
    public long Connects => Interlocked.Read(ref _connects);

    /// <summary>Messages acknowledged after they were stored.</summary>
    public long Acknowledged => Interlocked.Read(ref _acknowledged);

    /// <summary>Messages that could not be stored and were left to the broker to send again.</summary>
    public long NotStored => Interlocked.Read(ref _failures);

    internal void CountAttempt() => Interlocked.Increment(ref _attempts);

    internal void CountConnect() => Interlocked.Increment(ref _connects);

    internal void CountAcknowledged() => Interlocked.Increment(ref _acknowledged);

    internal void CountNotStored() => Interlocked.Increment(ref _failures);
}
