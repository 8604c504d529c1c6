namespace FermentWatch.Kinetics.Produce;

/// <summary>One vegetable of a jar and how much of it went in.</summary>
/// <param name="Vegetable">A vegetable of the catalogue.</param>
/// <param name="MassKilograms">Prepared mass in kilograms, above zero.</param>
public sealed record ProduceShare(Vegetable Vegetable, double MassKilograms);
