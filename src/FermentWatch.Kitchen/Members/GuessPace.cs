using FermentWatch.Kitchen.Health;
using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>
/// Slows those down who guess passwords, and never shuts a right one out for somebody else's wrong ones: after a few failures of one
/// user from one address each further try of that user from there waits, twice as long each time; after many failures from one
/// address its other users wait a little too. A household sits behind one address.
/// </summary>
/// <param name="time">The clock.</param>
/// <param name="longest">How long one try waits at most, above zero.</param>
/// <param name="mostWaiting">How many tries of one user from one address may wait at a time, at least 1.</param>
public sealed class GuessPace(TimeProvider time, TimeSpan longest, int mostWaiting)
{
    /// <summary>Failures of one user from one address that cost no waiting: a person mistypes.</summary>
    public const int FreeOfUser = 3;

    /// <summary>Failures from one address, of any users, that cost the others there no waiting.</summary>
    public const int FreeOfAddress = 30;

    /// <summary>How long failures are remembered, counted from the last.</summary>
    public static readonly TimeSpan Memory = TimeSpan.FromMinutes(15);

    /// <summary>How long the others of an address wait that failed much.</summary>
    public static readonly TimeSpan WaitOfOthers = TimeSpan.FromSeconds(1);

    private readonly Backoff _waits = new(Duration.FromMilliseconds(500), Duration.FromTimeSpan(longest));

    // Bounded, whatever strangers do: when it is full, what is oldest is forgotten.
    private const int MostRemembered = 10_000;

    private readonly Lock _gate = new();
    private readonly Dictionary<(string Address, string? User), Guesses> _guesses = [];

    /// <summary>How long a try would wait now.</summary>
    public TimeSpan WaitOf(string address, string user)
    {
        lock (_gate)
            return Wait(address, user);
    }

    /// <summary>Waits as long as this user's failures from there ask for. False where too many tries wait already: this one is to come again
    /// later.</summary>
    public async Task<bool> WaitAsync(string address, string user, CancellationToken cancellationToken)
    {
        TimeSpan wait;
        lock (_gate)
        {
            wait = Wait(address, user);
            if (wait == TimeSpan.Zero)
                return true;
            Guesses own = Of((address, user));
            if (own.Waiting >= mostWaiting)
                return false;
            _guesses[(address, user)] = own with { Waiting = own.Waiting + 1 };
        }
        try
        {
            await Task.Delay(wait, time, cancellationToken);
            return true;
        }
        finally
        {
            lock (_gate)
                if (_guesses.TryGetValue((address, user), out Guesses own))
                    _guesses[(address, user)] = own with { Waiting = Math.Max(0, own.Waiting - 1) };
        }
    }

    /// <summary>Notes a failure; how many of this user from there are remembered with it.</summary>
    public int Failed(string address, string user)
    {
        lock (_gate)
        {
            if (_guesses.Count >= MostRemembered)
                foreach (var oldest in _guesses.Where(each => each.Value.Waiting == 0).OrderBy(each =>
                    each.Value.Last).Take(MostRemembered / 2).ToList())
                    _guesses.Remove(oldest.Key);
            Add((address, null));
            return Add((address, user));
        }
    }

    /// <summary>Notes a right password: what this user mistyped from there is forgotten.</summary>
    public void Succeeded(string address, string user)
    {
        lock (_gate)
            if (_guesses.TryGetValue((address, user), out Guesses own))
                _guesses[(address, user)] = own with { Failures = 0 };
    }

    private TimeSpan Wait(string address, string user)
    {
        int own = Of((address, user)).Failures - FreeOfUser;
        if (own >= 0)
            return _waits.After(own + 1).ToTimeSpan();
        return Of((address, null)).Failures >= FreeOfAddress ? WaitOfOthers : TimeSpan.Zero;
    }

    private Guesses Of((string, string?) key) =>
        !_guesses.TryGetValue(key, out Guesses noted) ? new Guesses(0, 0, 0)
        : time.GetElapsedTime(noted.Last) < Memory ? noted : noted with { Failures = 0 };

    private int Add((string, string?) key)
    {
        Guesses before = Of(key);
        _guesses[key] = before with { Failures = before.Failures + 1, Last = time.GetTimestamp() };
        return before.Failures + 1;
    }

    private readonly record struct Guesses(int Failures, int Waiting, long Last);
}
