namespace FermentWatch.Kinetics.Recipe;

/// <summary>Brine of an earlier ferment added as a starter. Only from a jar with a counted reading and no trouble.</summary>
/// <param name="MassKilograms">Mass added, kg.</param>
/// <param name="AcidityPercentLactic">Its titratable acidity, per cent lactic.</param>
public sealed record StarterBrine(double MassKilograms, double AcidityPercentLactic);
