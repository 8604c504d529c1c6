namespace FermentWatch.Kitchen.Lines;

/// <summary>Why the readings of a jar ask for attention.</summary>
public enum AcidLineAlarm
{
    None = 0,

    /// <summary>One reading stands more than 0.2 above an earlier one by the same method: measure again.</summary>
    RiseToRecheck = 1,

    /// <summary>A rise of more than 0.2 by the same method, seen twice.</summary>
    Rise = 2,

    /// <summary>A counted reading above 4.6 after one below.</summary>
    BackAbove = 3,
}
