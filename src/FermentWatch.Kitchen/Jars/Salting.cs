namespace FermentWatch.Kitchen.Jars;

/// <summary>The salt of a jar.</summary>
/// <param name="Knowledge">How it is known.</param>
/// <param name="Percent">Per cent of vegetables and added water together; null when salted by taste.</param>
public sealed record Salting(SaltKnowledge Knowledge, double? Percent);
