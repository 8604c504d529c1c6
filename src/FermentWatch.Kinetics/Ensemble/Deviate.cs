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

    /// <summary>The household's liked level; moves no trajectory.</summary>
    public const int Taste = 13;

    public const int Count = 14;
}
