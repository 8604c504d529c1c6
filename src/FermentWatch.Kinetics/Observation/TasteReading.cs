namespace FermentWatch.Kinetics.Observation;

/// <summary>A taste. It teaches the household's scale and moves the tasting day, never a line.</summary>
/// <param name="Day">Days since packing, zero or more.</param>
/// <param name="Verdict">What was said.</param>
public sealed record TasteReading(double Day, TasteAnswer Verdict);
