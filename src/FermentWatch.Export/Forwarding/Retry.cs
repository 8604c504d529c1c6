using FermentWatch.Kitchen.Health;

namespace FermentWatch.Export.Forwarding;

/// <summary>When something that failed may be tried again.</summary>
internal sealed class Retry(TimeProvider time)
{
    private int _attempts;
    private long _failedAt;
    private TimeSpan _wait;

    /// <summary>How long to wait still; zero if it may be tried.</summary>
    public TimeSpan Left
    {
        get
        {
            TimeSpan left = _attempts == 0 ? TimeSpan.Zero : _wait - time.GetElapsedTime(_failedAt);
            return left > TimeSpan.Zero ? left : TimeSpan.Zero;
        }
    }

    /// <summary>It failed: waits longer each time, and at least as long as the other side asked for.</summary>
    public void Failed(TimeSpan? notBefore)
    {
        _attempts++;
        _failedAt = time.GetTimestamp();
        TimeSpan backoff = Backoff.Outside.After(_attempts).ToTimeSpan();
        _wait = notBefore > backoff ? notBefore.Value : backoff;
    }

    public void Succeeded() => _attempts = 0;
}
