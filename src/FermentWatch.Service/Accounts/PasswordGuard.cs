using System.Threading.RateLimiting;
using FermentWatch.Intake.Credentials;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;

namespace FermentWatch.Service.Accounts;

/// <summary>
/// Tries passwords at a pace that guessing cannot use: each wrong one of a name from an address makes the next wait longer, nobody's
/// account is ever locked, and a name that is not there costs the same time as one that is.
/// </summary>
public sealed partial class PasswordGuard(TimeProvider clock, ILogger<PasswordGuard> logger) : IDisposable
{
    private const int MostWaiting = 4, MostInLine = 100, MostLetters = 256;

    /// <summary>Hashing is made to be slow: this many at a time leave the machine to the sensors.</summary>
    private const int MostHashing = 2;

    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(15);

    private readonly GuessPace _pace = new(clock, LongestWait, MostWaiting);
    private readonly SemaphoreSlim _hashing = new(MostHashing);

    /// <summary>One at a time of an address, so that a flood from one leaves a turn to the others.</summary>
    private readonly PartitionedRateLimiter<string> _turns = PartitionedRateLimiter.Create<string, string>(from => RateLimitPartition.GetConcurrencyLimiter(
        from, _ => new ConcurrencyLimiterOptions { PermitLimit = 1, QueueLimit = MostInLine, QueueProcessingOrder = QueueProcessingOrder.OldestFirst }));

    private readonly Lock _made = new();
    private string? _nobodysHash;

    /// <summary>Whether a password is the account's.</summary>
    /// <param name="accounts">Where hashes are made and compared.</param>
    /// <param name="account">The account; null where nobody has the name.</param>
    /// <param name="name">The name that was typed.</param>
    /// <param name="password">The password that was typed.</param>
    /// <param name="from">The address of the caller.</param>
    /// <param name="cancellationToken">The caller has gone.</param>
    public async Task<PasswordAnswer> TryAsync(
        UserManager<Account> accounts, Account? account, string name, string? password, string from, CancellationToken cancellationToken)
    {
        string who = accounts.NormalizeName(name.Length > SafeText.LongestName ? name[..SafeText.LongestName] : name)!;
        if (!await _pace.WaitAsync(from, who, cancellationToken))
            return TooMany(name, from);
        using RateLimitLease turn = await _turns.AcquireAsync(from, 1, cancellationToken);
        if (!turn.IsAcquired)
            return TooMany(name, from);
        if (await IsRightAsync(accounts, account, password ?? "", cancellationToken))
        {
            _pace.Succeeded(from, who);
            return PasswordAnswer.Right;
        }
        int failures = _pace.Failed(from, who);
        SayWrong(logger, SafeText.ForLog(name), from, failures, _pace.WaitOf(from, who).TotalSeconds);
        return PasswordAnswer.Wrong;
    }

    public void Dispose()
    {
        _hashing.Dispose();
        _turns.Dispose();
    }

    private PasswordAnswer TooMany(string name, string from)
    {
        SayTooMany(logger, SafeText.ForLog(name), from);
        return PasswordAnswer.TooMany;
    }

    private async Task<bool> IsRightAsync(UserManager<Account> accounts, Account? account, string password, CancellationToken cancellationToken)
    {
        await _hashing.WaitAsync(cancellationToken);
        try
        {
            string typed = password.Length > MostLetters ? "" : password;
            string hash = account?.PasswordHash ?? NobodysHash(accounts);
            var answer = accounts.PasswordHasher.VerifyHashedPassword(account!, hash, typed);
            return account?.PasswordHash is not null && typed.Length > 0 && answer != PasswordVerificationResult.Failed;
        }
        finally
        {
            _hashing.Release();
        }
    }

    /// <summary>A hash of the same cost that nobody knows a password for.</summary>
    private string NobodysHash(UserManager<Account> accounts)
    {
        lock (_made)
            return _nobodysHash ??= accounts.PasswordHasher.HashPassword(null!, SensorPassword.Generate());
    }

    [LoggerMessage(4004, LogLevel.Warning, "A wrong password for {Name} from {Address}: {Failures} by now, the next try waits {Seconds} s")]
    private static partial void SayWrong(ILogger logger, string name, string address, int failures, double seconds);

    [LoggerMessage(4005, LogLevel.Warning, "Too many tries for {Name} from {Address} are waiting; one was sent away")]
    private static partial void SayTooMany(ILogger logger, string name, string address);
}

/// <summary>What became of a try.</summary>
public enum PasswordAnswer
{
    Right = 1,

    Wrong = 2,

    /// <summary>It was not tried: too many others of the same name and address wait.</summary>
    TooMany = 3,
}
