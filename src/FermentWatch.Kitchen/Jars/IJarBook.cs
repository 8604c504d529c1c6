using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Jars;

/// <summary>The record of jars, of where they stood and of what was seen.</summary>
public interface IJarBook
{
    /// <summary>Jars that are kept (not finished, not thrown out), whole, by number.</summary>
    Task<IReadOnlyList<Jar>> KeptAsync(CancellationToken cancellationToken);

    /// <summary>Those of the jars that ended (finished, thrown out) that ended last, whole, by number.</summary>
    Task<IReadOnlyList<Jar>> EndedLastAsync(int atMost, CancellationToken cancellationToken);

    /// <summary>Every jar there ever was, whole, by number.</summary>
    Task<IReadOnlyList<Jar>> AllAsync(CancellationToken cancellationToken);

    /// <summary>One jar, whole, or null.</summary>
    Task<Jar?> FindAsync(int number, CancellationToken cancellationToken);

    /// <summary>Jars of a batch, kept or ended, whole, by number; empty where there is none.</summary>
    Task<IReadOnlyList<Jar>> OfBatchAsync(Guid batch, CancellationToken cancellationToken);

    /// <summary>
    /// Adds jars in one step, gives each the next free number in the order of the list, and returns them as stored. Where one of their
    /// batches is on record already nothing is added, and what is on record of it is returned.
    /// </summary>
    Task<IReadOnlyList<Jar>> AddAsync(IReadOnlyList<Jar> jars, CancellationToken cancellationToken);

    /// <summary>Says from when on a jar stands in a place. An id that is there already changes nothing.</summary>
    Task MoveAsync(JarPlacement placement, CancellationToken cancellationToken);

    /// <summary>Puts facts of a jar right and keeps what stood before, in one step.</summary>
    /// <param name="corrected">The jar as it is to stand; its only placement is that of the beginning.</param>
    /// <param name="corrections">What changes, with what stood before.</param>
    /// <param name="cancellationToken">Gives up before anything is written.</param>
    Task PutRightAsync(Jar corrected, IReadOnlyList<JarCorrection> corrections, CancellationToken cancellationToken);

    /// <summary>Takes back a move that was none; the jar stands where it stood before. False if it is gone already.</summary>
    Task<bool> TakeBackMoveAsync(Guid placementId, JarCorrection correction, CancellationToken cancellationToken);

    /// <summary>
    /// Adds what was seen. A stage change that ends the jar also sets <see cref="Jar.EndedAt"/>.
    /// An observation whose id is there already changes nothing, so that a repeated answer counts once.
    /// </summary>
    Task ObserveAsync(IReadOnlyList<Observation> observations, CancellationToken cancellationToken);

    /// <summary>Marks an observation as taken back and adds the one that replaces it, if any, in one step. False if it was taken back
    /// before.</summary>
    Task<bool> CorrectAsync(Guid observationId, Instant at, string by, Observation? replacement, CancellationToken cancellationToken);
}

/// <summary>
/// One fact of a jar that was put right, or that changed: what stood before stays on record. Only added to.
/// </summary>
public sealed class JarCorrection
{
    public required Guid Id { get; init; }

    public required Guid JarId { get; init; }

    /// <summary>Which fact, in the words of the form: <c>vegetables</c>, <c>salt</c>, <c>lid</c>.</summary>
    public required string Field { get; init; }

    /// <summary>What stood before, in words.</summary>
    public required string Before { get; init; }

    /// <summary>What stands since, in words.</summary>
    public required string After { get; init; }

    /// <summary>Since when it is so, for what changes in a jar's life (cover, lid, how sour); null where it was wrong from the beginning.</summary>
    public Instant? Since { get; init; }

    public required Instant EnteredAt { get; init; }

    public required string By { get; init; }
}
