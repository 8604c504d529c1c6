using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using NodaTime;

namespace FermentWatch.Storage.Records;

/// <summary>A sign-in that has not been ended.</summary>
public sealed class SignIn
{
    public required Guid Id { get; init; }

    public required Guid AccountId { get; init; }

    public required Instant BegunAt { get; init; }
}

/// <summary>A topic on which a home hub was told of us.</summary>
internal sealed class Announcement
{
    public required string Topic { get; init; }
}

/// <summary>A kind of occasion this household is not told of.</summary>
internal sealed class MutedKind
{
    public required OccasionKind Kind { get; init; }
}

/// <summary>The one row that counts saved changes of facts.</summary>
internal sealed class FactsRevision
{
    internal const int OnlyId = 1;

    public int Id { get; init; } = OnlyId;

    public long Facts { get; init; }
}

/// <summary>The place of one observation in the order of entry; ids and times may come in any order.</summary>
internal sealed class ObservationEntry
{
    /// <summary>Given by the database, rising, never used again.</summary>
    public long Seq { get; init; }

    public required Guid ObservationId { get; init; }

    public Observation? Observation { get; init; }
}
