namespace FermentWatch.Intake.Decoding.SenMl;

/// <summary>A resolved pack, and what of it could not be read.</summary>
public sealed record SenMlPack(IReadOnlyList<SenMlRecord> Records, IReadOnlyList<DecodeFault> Faults);
