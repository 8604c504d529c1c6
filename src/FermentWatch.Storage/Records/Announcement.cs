namespace FermentWatch.Storage.Records;

/// <summary>A topic on which a home hub was told of us.</summary>
internal sealed class Announcement
{
    public required string Topic { get; init; }
}
