using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Storage.Records;

/// <summary>The place of one observation in the order of entry; ids and times may come in any order.</summary>
internal sealed class ObservationEntry
{
    /// <summary>Given by the database, rising, never used again.</summary>
    public long Seq { get; init; }

    public required Guid ObservationId { get; init; }

    public Observation? Observation { get; init; }
}
