using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>How far a script may go; each includes those before it.</summary>
public enum ScriptScope
{
    /// <summary>Everything that can be asked; nothing is changed.</summary>
    Read = 1,

    /// <summary>What is done with jars is written down: put up, looked at, tasted, measured, moved, ended, corrected.</summary>
    Record = 2,

    /// <summary>All that its maker may do: sensors, places, notices and the household as well.</summary>
    Manage = 3,
}

/// <summary>
/// Lets a script call the API in somebody's name, without that person's password, until it is withdrawn. The key itself is shown once and not
/// kept. It is sent as a bearer token (M. Jones, D. Hardt, "The OAuth 2.0 Authorization Framework: Bearer Token Usage", RFC 6750, 2012,
/// section 2.1).
/// </summary>
public sealed class ScriptKey
{
    public required Guid Id { get; init; }

    /// <summary>The account in whose name the script enters things; with it the key goes.</summary>
    public required Guid AccountId { get; init; }

    /// <summary>What the household calls the script.</summary>
    public required string Name { get; init; }

    public required ScriptScope Scope { get; init; }

    /// <summary>See <see cref="LongSecret.HashOf"/>; unique.</summary>
    public required string SecretHash { get; init; }

    public required Instant MadeAt { get; init; }

    /// <summary>When it was used last, to the day at most: a script that asks each minute is not to write each minute. Null before.</summary>
    public Instant? UsedAt { get; set; }
}

/// <summary>The record of keys for scripts.</summary>
public interface IScriptKeyBook
{
    Task AddAsync(ScriptKey key, CancellationToken cancellationToken);

    /// <summary>Every key, by name, with the name of the account it belongs to.</summary>
    Task<IReadOnlyList<(ScriptKey Key, string Person)>> AllAsync(CancellationToken cancellationToken);

    /// <summary>The key whose secret has this hash, and who stands behind it as the records have it now; null if there is none.</summary>
    Task<(ScriptKey Key, SignedIn Who)?> FindAsync(string secretHash, CancellationToken cancellationToken);

    /// <summary>Notes that a key was used.</summary>
    Task NoteUseAsync(Guid id, Instant now, CancellationToken cancellationToken);

    /// <summary>Takes a key away; nothing where it is gone.</summary>
    Task WithdrawAsync(Guid id, CancellationToken cancellationToken);
}
