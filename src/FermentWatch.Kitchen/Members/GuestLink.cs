using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>Lets somebody who looks in read the round and answer it, until it expires. The secret itself is shown once and not kept.</summary>
public sealed class GuestLink
{
    private const string Mark = " (guest)";

    public required Guid Id { get; init; }

    /// <summary>Who looks in; stands beside what this person answers.</summary>
    public required string Name { get; init; }

    /// <summary>See <see cref="LongSecret.HashOf"/>; unique.</summary>
    public required string SecretHash { get; init; }

    public required string MadeBy { get; init; }

    public required Instant MadeAt { get; init; }

    public required Instant ExpiresAt { get; init; }

    /// <summary>When it was withdrawn; null while it was not.</summary>
    public Instant? WithdrawnAt { get; set; }

    /// <summary>How this guest's answers are signed.</summary>
    public string By => Name + Mark;

    /// <summary>Whether it opens the round at an instant.</summary>
    public bool Opens(Instant now) => WithdrawnAt is null && now < ExpiresAt;
}

/// <summary>The record of guest links.</summary>
public interface IGuestBook
{
    Task AddAsync(GuestLink link, CancellationToken cancellationToken);

    /// <summary>The link whose secret has this hash, expired or not; null if there is none.</summary>
    Task<GuestLink?> FindAsync(string secretHash, CancellationToken cancellationToken);

    /// <summary>Links that were neither withdrawn nor had expired at an instant, the first to expire first.</summary>
    Task<IReadOnlyList<GuestLink>> OpenAsync(Instant now, CancellationToken cancellationToken);

    Task WithdrawAsync(Guid id, Instant now, CancellationToken cancellationToken);
}
