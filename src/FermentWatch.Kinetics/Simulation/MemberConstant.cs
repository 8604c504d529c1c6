namespace FermentWatch.Kinetics.Simulation;

/// <summary>Where a member's constants stand in its lane: index of the vector within a block. Groups of four are by guild.</summary>
internal static class MemberConstant
{
    public const int Rate = 0;
    public const int Maintenance = 4;
    public const int GrowthHexose = 8;
    public const int LacticYield = 12;
    public const int AceticYield = 16;
    public const int TemperatureMinimum = 20;
    public const int TemperatureOptimum = 24;
    public const int TemperatureMaximum = 28;
    public const int PhFactor = 32;
    public const int AcidFactor = 36;
    public const int FirstLnCount = 40;
    public const int PhPower = 44;
    public const int InverseRoom = 45;
    public const int AceticWeight = 46;
    public const int HalfHexose = 47;
    public const int LagFactor = 48;
    public const int Exchange = 49;
    public const int OuterShare = 50;
    public const int Lactic = 51;
    public const int Acetic = 52;
    public const int Malic1 = 53;
    public const int Malic12 = 54;
    public const int Citric1 = 55;
    public const int Citric12 = 56;
    public const int Citric123 = 57;
    public const int Phosphoric1 = 58;
    public const int Phosphoric12 = 59;
    public const int SideChain = 60;
    public const int Water = 61;
    public const int FreeHydrogen = 62;
    public const int StrongIons = 63;
    public const int MalicTotal = 64;
    public const int CitricTotal = 65;
    public const int PhosphateTotal = 66;
    public const int SideChainTotal = 67;
    public const int NativeAcidity = 68;
    public const int OuterStart = 69;
    public const int InnerStart = 70;
    public const int TemperatureDeviate = 71;
    public const int FirstHexoseOuter = 72;
    public const int FirstHexoseInner = 73;
    public const int FirstLactic = 74;
    public const int FirstAcetic = 75;

    public const int InverseLacticLimit = 76;

    /// <summary>ln of the pace at the knots of <see cref="LanePace"/>.</summary>
    public const int LnPace = 77;

    public const int LnStagePace = 81;

    /// <summary>What the model itself is off by, pH at the knots of <see cref="LanePace"/>.</summary>
    public const int PhOffset = 82;

    public const int AcidityFactor = 86;

    public const int Count = 87;
}
