using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Lines;

/// <summary>Where a jar stands against the acid line.</summary>
/// <param name="State">One of the three states.</param>
/// <param name="LastCounted">The reading behind it; null when not measured.</param>
/// <param name="Settled">Two counted readings below the line on different days, none above since, and no alarm.</param>
/// <param name="Alarm">What asks for attention.</param>
public sealed record AcidLineReport(AcidLineState State, PhMeasurement? LastCounted, bool Settled, AcidLineAlarm Alarm);
