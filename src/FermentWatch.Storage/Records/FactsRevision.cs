namespace FermentWatch.Storage.Records;

/// <summary>The one row that counts saved changes of facts.</summary>
internal sealed class FactsRevision
{
    internal const int OnlyId = 1;

    public int Id { get; init; } = OnlyId;

    public long Facts { get; init; }
}
