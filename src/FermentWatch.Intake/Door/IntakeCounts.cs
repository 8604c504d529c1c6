using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Intake.Door;

/// <summary>What came in since the service started, for the metrics and the sensors page.</summary>
public sealed class IntakeCounts
{
    private readonly long[] _rejected = new long[Enum.GetValues<RejectReason>().Max(reason => (int)reason) + 1];
    private long _messages;
    private long _stored;
    private long _duplicates;
    private long _conflicts;
    private long _redeliveries;
    private long _ignored;

    /// <summary>Messages that reached the door.</summary>
    public long Messages => Interlocked.Read(ref _messages);

    /// <summary>Readings that were new.</summary>
    public long Stored => Interlocked.Read(ref _stored);

    /// <summary>Readings that were there already with the same value.</summary>
    public long Duplicates => Interlocked.Read(ref _duplicates);

    /// <summary>Readings whose place was taken by another value.</summary>
    public long Conflicts => Interlocked.Read(ref _conflicts);

    /// <summary>Messages without a time of their own that were told to be redeliveries.</summary>
    public long Redeliveries => Interlocked.Read(ref _redeliveries);

    /// <summary>Messages of an outside broker that are none of ours.</summary>
    public long Ignored => Interlocked.Read(ref _ignored);

    /// <summary>Payloads and fields that were not stored for this reason.</summary>
    public long Rejected(RejectReason reason) => Interlocked.Read(ref _rejected[(int)reason]);

    internal void CountMessage() => Interlocked.Increment(ref _messages);

    internal void CountRedelivery() => Interlocked.Increment(ref _redeliveries);

    internal void CountIgnored() => Interlocked.Increment(ref _ignored);

    internal void Count(RejectReason reason) => Interlocked.Increment(ref _rejected[(int)reason]);

    internal void Count(AppendResult result)
    {
        Interlocked.Add(ref _stored, result.Stored);
        Interlocked.Add(ref _duplicates, result.Duplicates);
        Interlocked.Add(ref _conflicts, result.Conflicts);
    }
}
