namespace FermentWatch.Kinetics.Ensemble;

/// <summary>What members differ in: index into a member's standard deviates.</summary>
internal static class Deviate
{
    public const int Rate = 0;
    public const int Starters = 1;
    public const int Finishers = 2;
    public const int Lag = 3;
    public const int Sugar = 4;
    public const int StrongIons = 5;
    public const int NativeAcids = 6;
    public const int Salt = 7;
    public const int Temperature = 8;
    public const int Exchange = 9;
    public const int AcidTolerance = 10;
    public const int PhTolerance = 11;
    public const int Upkeep = 12;

    public const int StarterAcid = 13;

    /// <summary>Pace at the knots of <see cref="Simulation.LanePace"/>.</summary>
    public const int Pace = 14;

    /// <summary>Pace once acid has come.</summary>
    public const int StagePace = 18;

    /// <summary>What the model itself is off by in pH, at the same knots.</summary>
    public const int PhOffset = 19;

    /// <summary>What the model itself is off by in acidity.</summary>
    public const int AcidityOffset = 23;

    /// <summary>The household's liked level; moves no trajectory.</summary>
    public const int Taste = 24;

    /// <summary>Growth of the finishers alone: when they take over.</summary>
    public const int FinisherRate = 25;

    public const int Count = 26;
}
