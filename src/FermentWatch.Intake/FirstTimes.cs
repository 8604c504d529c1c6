namespace FermentWatch.Intake;

/// <summary>Tells what is new from what repeats, so that a flood is named in the log once and not per message.</summary>
public sealed class FirstTimes(TimeSpan span, TimeProvider time)
{
    // Bounded, whatever clients do. When it is full all is forgotten: a name too many in the log is the lesser evil.
    private const int MostRemembered = 1_000;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, long> _seen = new(StringComparer.Ordinal);

    /// <summary>Whether this was not seen within the span; from now on it was.</summary>
    public bool IsFirst(string what)
    {
        lock (_gate)
        {
            long now = time.GetTimestamp();
            if (_seen.TryGetValue(what, out long seen) && time.GetElapsedTime(seen, now) < span)
                return false;
            if (_seen.Count >= MostRemembered)
                _seen.Clear();
            _seen[what] = now;
            return true;
        }
    }
}
