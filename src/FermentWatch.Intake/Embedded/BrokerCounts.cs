namespace FermentWatch.Intake.Embedded;

/// <summary>What the broker refused or dropped since the service started.</summary>
public sealed class BrokerCounts
{
    private readonly long[] _refused = new long[Enum.GetValues<RefusalReason>().Max(reason => (int)reason) + 1];
    private long _dropped;

    /// <summary>Messages for a subscriber too slow to take them, dropped oldest first. They were stored; only it misses them.</summary>
    public long DroppedForSlowSubscribers => Interlocked.Read(ref _dropped);

    /// <summary>How often something was refused for this reason.</summary>
    public long Refused(RefusalReason reason) => Interlocked.Read(ref _refused[(int)reason]);

    internal void Count(RefusalReason reason) => Interlocked.Increment(ref _refused[(int)reason]);

    internal void CountDropped() => Interlocked.Increment(ref _dropped);
}
