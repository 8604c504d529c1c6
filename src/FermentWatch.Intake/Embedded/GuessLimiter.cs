namespace FermentWatch.Intake.Embedded;

/// <summary>
/// Stops those who guess passwords from costing more than the first few guesses: after several failures from one address for one
/// user, and after many from one address for any, nothing is looked up or hashed for a while. A right password for another user
/// from the same address still gets in until the second limit, because a household may sit behind one address.
/// </summary>
public sealed class GuessLimiter(TimeProvider time)
{
    /// <summary>Failures for one user from one address within <see cref="Span"/>.</summary>
    public const int PerUser = 10;

    /// <summary>Failures for any user from one address within <see cref="Span"/>.</summary>
    public const int PerAddress = 200;

    /// <summary>How long failures are remembered, counted from the first.</summary>
    public static readonly TimeSpan Span = TimeSpan.FromMinutes(1);

    // Bounded, whatever strangers do: when it is full all is forgotten.
    private const int MostRemembered = 10_000;

    private readonly Lock _gate = new();
    private readonly Dictionary<(string Address, string? User), (long Since, int Failures)> _failures = [];

    /// <summary>Whether a guess from there for this user is looked at.</summary>
    public bool Allows(string address, string user)
    {
        lock (_gate)
            return Failures((address, user)) < PerUser && Failures((address, null)) < PerAddress;
    }

    /// <summary>Notes a failure.</summary>
    public void Failed(string address, string user)
    {
        lock (_gate)
        {
            if (_failures.Count >= MostRemembered)
                _failures.Clear();
            Add((address, user));
            Add((address, null));
        }
    }

    private int Failures((string, string?) key) =>
        _failures.TryGetValue(key, out var noted) && time.GetElapsedTime(noted.Since) < Span ? noted.Failures : 0;

    private void Add((string, string?) key)
    {
        int before = Failures(key);
        _failures[key] = (before == 0 ? time.GetTimestamp() : _failures[key].Since, before + 1);
    }
}
