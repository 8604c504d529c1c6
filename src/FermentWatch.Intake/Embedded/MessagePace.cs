namespace FermentWatch.Intake.Embedded;

/// <summary>
/// How fast one user may send: a bucket that holds ten seconds' worth and refills steadily. Whoever empties it waits for the
/// next message's share; the wait holds up its connections only, and nothing is lost.
/// </summary>
public sealed class MessagePace
{
    /// <summary>How many seconds' worth may come at once, as after an outage.</summary>
    public const int BurstSeconds = 10;

    private readonly int _perSecond;
    private readonly TimeProvider _time;
    private double _left;
    private long _refilledAt;

    /// <summary>A full bucket.</summary>
    /// <param name="perSecond">Messages a second, above 0.</param>
    /// <param name="time">Monotonic time.</param>
    public MessagePace(int perSecond, TimeProvider time)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(perSecond);
        (_perSecond, _time) = (perSecond, time);
        (_left, _refilledAt) = ((double)perSecond * BurstSeconds, time.GetTimestamp());
    }

    /// <summary>Takes one message's share; how long it must wait for it, zero as a rule. Called by one thread at a time.</summary>
    public TimeSpan Take()
    {
        long now = _time.GetTimestamp();
        _left = Math.Min(_perSecond * BurstSeconds, _left + (_time.GetElapsedTime(_refilledAt, now).TotalSeconds * _perSecond));
        _refilledAt = now;
        _left -= 1;
        return _left >= 0 ? TimeSpan.Zero : TimeSpan.FromSeconds(-_left / _perSecond);
    }
}
