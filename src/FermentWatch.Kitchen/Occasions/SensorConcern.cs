namespace FermentWatch.Kitchen.Occasions;

/// <summary>A sensor that a person should look at.</summary>
/// <param name="Kind">One of the kinds about sensors.</param>
/// <param name="SensorId">The sensor.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Cause">What is wrong, by name.</param>
/// <param name="Words">What it is and what to do, in a sentence or two.</param>
public sealed record SensorConcern(OccasionKind Kind, Guid SensorId, string Name, string Cause, string Words);
