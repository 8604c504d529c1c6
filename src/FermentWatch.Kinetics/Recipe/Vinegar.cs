namespace FermentWatch.Kinetics.Recipe;

/// <summary>Vinegar added at packing.</summary>
/// <param name="MassKilograms">Mass added, kg.</param>
/// <param name="AceticPercent">Its strength, per cent acetic acid by mass; table vinegar is 5.</param>
public sealed record Vinegar(double MassKilograms, double AceticPercent);
