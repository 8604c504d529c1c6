namespace FermentWatch.Kitchen.Readings;

/// <summary>What became of a group of readings, once it was committed.</summary>
/// <param name="Stored">Rows that were new.</param>
/// <param name="Duplicates">Rows that were there already with the same value.</param>
/// <param name="Conflicts">Rows whose sensor, quantity and instant were there with another value; the first stays.</param>
public readonly record struct AppendResult(int Stored, int Duplicates, int Conflicts);
