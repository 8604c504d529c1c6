using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Decoding.SenMl;

/// <summary>A resolved pack, and what of it could not be read.</summary>
public sealed record SenMlPack(IReadOnlyList<SenMlRecord> Records, IReadOnlyList<DecodeFault> Faults);

/// <summary>One record of a pack in resolved form (RFC 8428 section 4.6): base fields worked in, time absolute.</summary>
/// <param name="Name">Base name and name; empty where the pack gives neither.</param>
/// <param name="Unit">Its unit, or the base unit; null where neither is given.</param>
/// <param name="Number">Its value and the base value added up; null where the record has no number.</param>
/// <param name="Other">The JSON text of its string, boolean or data value; null where it has none.</param>
/// <param name="MeasuredAt">Its time, to the millisecond.</param>
/// <param name="TimeSource">Arrival where neither the record nor the base gives a time.</param>
/// <param name="Text">The record as it came, for examples.</param>
public sealed record SenMlRecord(
    string Name, string? Unit, double? Number, string? Other, Instant MeasuredAt, TimeSource TimeSource, string Text);
