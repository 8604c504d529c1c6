using System.Threading.RateLimiting;
using FermentWatch.Acts.Members;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Web.Accounts;

/// <summary>
/// Tries passwords at a pace that guessing cannot use: each wrong one of a name from an address makes the next wait longer, nobody's
/// account is ever locked, and a name that is not there costs the same time as one that is.
/// </summary>
public sealed partial class PasswordGuard(TimeProvider clock, ILogger<PasswordGuard> logger) : IDisposable
{
    private const int MostWaiting = 4, MostInLine = 100;

    /// <summary>Hashing is made to be slow: this many at a time leave the machine to the sensors.</summary>
    private const int MostHashing = 2;

    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(15);

    private readonly GuessPace _pace = new(clock, LongestWait, MostWaiting);
    private readonly SemaphoreSlim _hashing = new(MostHashing);

    /// <summary>One at a time of an address, so that a flood from one leaves a turn to the others.</summary>
    private readonly PartitionedRateLimiter<string> _turns = PartitionedRateLimiter.Create<string, string>(from =>
        RateLimitPartition.GetConcurrencyLimiter(
        from, _ => new ConcurrencyLimiterOptions { PermitLimit = 1, QueueLimit = MostInLine,
            QueueProcessingOrder = QueueProcessingOrder.OldestFirst }));

    /// <summary>Whose name and password belong together.</summary>
    /// <param name="accounts">Where passwords are compared.</param>
    /// <param name="name">The name that was typed.</param>
    /// <param name="password">The password that was typed.</param>
    /// <param name="from">The address of the caller.</param>
    /// <param name="cancellationToken">The caller has gone.</param>
    public async Task<PasswordTry> TryAsync(AccountReader accounts, string name, string? password, string from, CancellationToken cancellationToken)
    {
        string who = (name.Length > SafeText.LongestName ? name[..SafeText.LongestName] : name).ToUpperInvariant();
        if (!await _pace.WaitAsync(from, who, cancellationToken))
            return TooMany(name, from);
        using RateLimitLease turn = await _turns.AcquireAsync(from, 1, cancellationToken);
        if (!turn.IsAcquired)
            return TooMany(name, from);
        if (await WithPasswordAsync(accounts, name, password ?? "", cancellationToken) is { } account)
        {
            _pace.Succeeded(from, who);
            return new PasswordTry(PasswordAnswer.Right, account);
        }
        int failures = _pace.Failed(from, who);
        SayWrong(logger, SafeText.ForLog(name), from, failures, _pace.WaitOf(from, who).TotalSeconds);
        return new PasswordTry(PasswordAnswer.Wrong, null);
    }

    public void Dispose()
    {
        _hashing.Dispose();
        _turns.Dispose();
    }

    private PasswordTry TooMany(string name, string from)
    {
        SayTooMany(logger, SafeText.ForLog(name), from);
        return new PasswordTry(PasswordAnswer.TooMany, null);
    }

    private async Task<KnownAccount?> WithPasswordAsync(AccountReader accounts, string name, string password, CancellationToken cancellationToken)
    {
        await _hashing.WaitAsync(cancellationToken);
        try
        {
            return await accounts.WithPasswordAsync(name, password, cancellationToken);
        }
        finally
        {
            _hashing.Release();
        }
    }

    [LoggerMessage(4004, LogLevel.Warning, "A wrong password for {Name} from {Address}: {Failures} by now, the next try waits {Seconds} s")]
    private static partial void SayWrong(ILogger logger, string name, string address, int failures, double seconds);

    [LoggerMessage(4005, LogLevel.Warning, "Too many tries for {Name} from {Address} are waiting; one was sent away")]
    private static partial void SayTooMany(ILogger logger, string name, string address);
}

/// <summary>A try and whose account it opened.</summary>
/// <param name="Answer">What became of it.</param>
/// <param name="Account">The account; null where it was not right.</param>
public sealed record PasswordTry(PasswordAnswer Answer, KnownAccount? Account);

/// <summary>What became of a try.</summary>
public enum PasswordAnswer
{
    Right = 1,

    Wrong = 2,

    /// <summary>It was not tried: too many others of the same name and address wait.</summary>
    TooMany = 3,
}
