using NodaTime;

namespace FermentWatch.Kitchen.Jars;

/// <summary>From when on a jar stands in a place.</summary>
public sealed class JarPlacement
{
    public required Guid Id { get; init; }

    public required Guid JarId { get; init; }

    public required Guid PlaceId { get; init; }

    public required Instant From { get; init; }
}
