namespace FermentWatch.Kinetics.Simulation;

/// <summary>Where the state variables stand. Outer is brine and drawn juice, inner what is still in the pieces.</summary>
internal static class State
{
    /// <summary>ln of the count, 1e9 CFU/mL, four guilds.</summary>
    public const int LnCount = 0;

    /// <summary>What is left of the lag, 1 to 0, four guilds.</summary>
    public const int LagLeft = 4;

    public const int HexoseOuter = 8;
    public const int LacticOuter = 9;
    public const int AceticOuter = 10;
    public const int HexoseInner = 11;
    public const int LacticInner = 12;
    public const int AceticInner = 13;

    public const int Count = 14;
}
