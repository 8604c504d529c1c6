using NodaTime;

namespace FermentWatch.Kitchen.Jars;

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
