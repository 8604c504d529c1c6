namespace FermentWatch.Kitchen.Observations;

/// <summary>Somebody looked at the jar and all was well.</summary>
public sealed class Look : Observation
{
    /// <summary>True if the jar was opened, false if looked at through the glass.</summary>
    public required bool Opened { get; init; }
}
