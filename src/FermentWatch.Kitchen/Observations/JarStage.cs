namespace FermentWatch.Kitchen.Observations;

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
