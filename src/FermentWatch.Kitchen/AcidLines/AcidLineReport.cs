using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.AcidLines;

/// <summary>Where a jar stands against the acid line.</summary>
/// <param name="State">One of the three states.</param>
/// <param name="LastCounted">The reading behind it; null when not measured.</param>
/// <param name="Settled">
/// Two counted readings below the line on different days, none above since, and no alarm; where it is in pieces, one of them of
/// pieces blended with their brine.
/// </param>
/// <param name="Alarm">What asks for attention.</param>
public sealed record AcidLineReport(AcidLineState State, PhMeasurement? LastCounted, bool Settled, AcidLineAlarm Alarm)
{
    /// <summary>Whether it is in pieces and every counted reading below the line is of brine alone, which the acid reaches first.</summary>
    public bool BlendedMissing { get; init; }

    /// <summary>The last reading, where it is too near the line to count: it is measured again the next day. Null where it is not.</summary>
    public PhMeasurement? TooNear { get; init; }

    /// <summary>Whether nothing but a blended reading is wanting for it to be settled.</summary>
    public bool AwaitsBlended { get; init; }
}

/// <summary>The three states of a jar against the acid line at pH 4.6.</summary>
public enum AcidLineState
{
    /// <summary>No reading that counts. Neither fine nor a reason to discard.</summary>
    NotMeasured = 1,

    MeasuredBelow = 2,
    MeasuredAbove = 3,
}

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
