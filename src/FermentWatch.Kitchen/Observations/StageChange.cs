namespace FermentWatch.Kitchen.Observations;

/// <summary>The jar went into the cold, was finished, or was thrown out; why stands in the note.</summary>
public sealed class StageChange : Observation
{
    public required JarStage Stage { get; init; }
}
