namespace FermentWatch.Kitchen.Households;

/// <summary>What a household can measure a pH with. What it is asked for follows; what it enters counts by the method entered.</summary>
public enum PhTool
{
    /// <summary>Nothing: no jar is asked for its pH.</summary>
    Nothing = 0,

    Strips = 1,
    Meter = 2,

    /// <summary>A probe that stands in a jar or is dipped, with its checks in buffer.</summary>
    Probe = 3,
}
