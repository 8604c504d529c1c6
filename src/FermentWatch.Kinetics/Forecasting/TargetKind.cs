namespace FermentWatch.Kinetics.Forecasting;

/// <summary>The quantity a target is set on.</summary>
public enum TargetKind
{
    /// <summary>pH of the brine, reached from above.</summary>
    Ph,

    /// <summary>Titratable acidity in per cent lactic, reached from below.</summary>
    AcidityPercentLactic,

    /// <summary>Sourness index in mmol/L, reached from below.</summary>
    Sourness,
}
