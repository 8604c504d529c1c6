namespace FermentWatch.Kitchen.Jars;

/// <summary>Brine of an earlier jar that was put in to start this one.</summary>
/// <param name="FromJar">Number of that jar.</param>
/// <param name="MassKilograms">How much of it, above zero.</param>
/// <param name="AcidityPercentLactic">Its acidity as it was expected when it was taken, per cent lactic.</param>
public sealed record Starter(int FromJar, double MassKilograms, double AcidityPercentLactic);
