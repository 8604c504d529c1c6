namespace FermentWatch.Kitchen.Observations;

/// <summary>The jar went into the cold, was finished, or was thrown out; why stands in the note.</summary>
public sealed class StageChange : Observation
{
    public required JarStage Stage { get; init; }
}

/// <summary>Where a jar is in its life.</summary>
public enum JarStage
{
    /// <summary>Working at room or cellar temperature.</summary>
    Fermenting = 1,

    /// <summary>In the cold store.</summary>
    Cold = 2,

    /// <summary>Eaten or given away.</summary>
    Finished = 3,

    /// <summary>Thrown out.</summary>
    ThrownOut = 4,
}
