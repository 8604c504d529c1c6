namespace FermentWatch.Kitchen.Readings;

/// <summary>Readings of one sensor that have no verdict yet.</summary>
/// <param name="SensorKey">The sensor.</param>
/// <param name="After">They were written after this place.</param>
/// <param name="UpTo">They were written up to this place.</param>
public sealed record WaitingReadings(int SensorKey, long After, long UpTo);
