namespace FermentWatch.Kitchen.Observations;

/// <summary>A picture kept with what was seen.</summary>
public sealed class Photo
{
    /// <summary>What it shows.</summary>
    public required Guid ObservationId { get; init; }

    /// <summary>A small JPEG that says nothing of where or by what it was taken.</summary>
    public required byte[] Jpeg { get; init; }

    /// <summary>Who sent it; null where that is from before it was noted.</summary>
    public string? By { get; init; }
}
