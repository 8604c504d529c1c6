using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Lines;

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

    /// <summary>Whether nothing but a blended reading is wanting for it to be settled.</summary>
    public bool AwaitsBlended { get; init; }
}
