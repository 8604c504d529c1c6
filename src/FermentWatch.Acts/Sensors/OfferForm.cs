namespace FermentWatch.Acts.Sensors;

/// <summary>Takes an offer: this topic is a sensor, and it measures this.</summary>
public sealed record OfferForm
{
    /// <summary>The topic that was offered.</summary>
    public string? Topic { get; init; }

    /// <summary>JSON Pointer to the value that was offered; empty for a bare number.</summary>
    public string? ValuePointer { get; init; }

    /// <summary>The unit, where the guess was wrong; empty takes the guess.</summary>
    public string? Unit { get; init; }

    /// <summary><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</summary>
    public string? Where { get; init; }
}
