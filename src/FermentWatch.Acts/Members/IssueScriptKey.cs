using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Members;

/// <summary>Where keys for scripts are made, known again and withdrawn.</summary>
public sealed class IssueScriptKey(IScriptKeyBook keys, TimeProvider clock)
{
    /// <summary>What a key begins with, so that whoever finds one in a file knows what it opens.</summary>
    public const string Prefix = "fwkey_";

    private const int LongestName = 40;
    private static readonly Duration UseIsNoted = Duration.FromDays(1);

    private Instant Now => clock.GetUtcNow().ToInstant();

    /// <summary>Every key, by name, with whose it is.</summary>
    public Task<IReadOnlyList<(ScriptKey Key, string Person)>> AllAsync(CancellationToken cancellationToken) => keys.AllAsync(cancellationToken);

    /// <summary>Makes a key, which is shown now and never again; or what was wrong.</summary>
    public async Task<(string? Key, IReadOnlyList<Refusal> Refusals)> MakeAsync(ScriptKeyInput input, Guid account,
        CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        string name = reader.ReadName("script", input.Name, LongestName);
        var scope = reader.ReadChoice("may", input.Scope, ScriptScope.Read);
        if (reader.Refusals.Count > 0)
            return (null, reader.Refusals);
        string key = Prefix + LongSecret.New();
        await keys.AddAsync(new ScriptKey
        {
            Id = Guid.CreateVersion7(clock.GetUtcNow()), AccountId = account, Name = name, Scope = scope, SecretHash = LongSecret.HashOf(key),
            MadeAt = Now,
        }, cancellationToken);
        return (key, []);
    }

    /// <summary>The key of a secret and who stands behind it; null where there is none (any more).</summary>
    public async Task<(ScriptKey Key, SignedIn Who)?> FindAsync(string secret, CancellationToken cancellationToken)
    {
        if (!secret.StartsWith(Prefix, StringComparison.Ordinal)
            || await keys.FindAsync(LongSecret.HashOf(secret), cancellationToken) is not { } found)
            return null;
        if (found.Key.UsedAt is not { } used || Now - used >= UseIsNoted)
            await keys.NoteUseAsync(found.Key.Id, Now, cancellationToken);
        return found;
    }

    public Task WithdrawAsync(Guid id, CancellationToken cancellationToken) => keys.WithdrawAsync(id, cancellationToken);
}

/// <summary>A key for a script, as typed.</summary>
public sealed class ScriptKeyInput
{
    public string? Name { get; set; }

    /// <summary>A <see cref="ScriptScope"/> by name; Read where nothing is said.</summary>
    public string? Scope { get; set; }

    /// <summary>The key that is withdrawn; empty for a new one.</summary>
    public string? Withdrawn { get; set; }
}
