namespace FermentWatch.Faults.Tests;

/// <summary>What was sent under one number, and whether an acknowledgement came.</summary>
internal sealed class Sent
{
    private int _times;

    /// <summary>How often it was sent.</summary>
    public int Times => _times;

    public bool IsAcknowledged { get; private set; }

    public void Again() => Interlocked.Increment(ref _times);

    public void Acknowledge() => IsAcknowledged = true;
}
