namespace FermentWatch.Kinetics.Observation;

/// <summary>Whether a jar was seen to bubble. It moves the tasting day, never a line.</summary>
/// <param name="Day">Days since packing, zero or more.</param>
/// <param name="Seen">Bubbles rose or the brine was pushed up; false: nothing moved.</param>
public sealed record GasReading(double Day, bool Seen);
