namespace FermentWatch.Kitchen.Readings;

/// <summary>A reading with the verdict it has at present.</summary>
public sealed record JudgedReading(Reading Reading, Verdict Verdict);
