namespace FermentWatch.Kitchen.Readings;

/// <summary>A piece of the log in the order in which it was written.</summary>
/// <param name="Readings">The readings, possibly none.</param>
/// <param name="Cursor">The place of the last of them, after which the next slice begins.</param>
public sealed record LogSlice(IReadOnlyList<JudgedReading> Readings, long Cursor);
