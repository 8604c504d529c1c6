namespace FermentWatch.Kinetics.Produce;

/// <summary>Which first counts of lactic acid bacteria a raw vegetable is taken to bring along.</summary>
public enum FloraKind
{
    /// <summary>Tight heads, washed by their own leaves.</summary>
    Head,

    /// <summary>Open leaves.</summary>
    Leaf,

    /// <summary>Roots, which carry soil.</summary>
    Root,

    /// <summary>Smooth fruit, for example cucumber.</summary>
    Fruit,
}
