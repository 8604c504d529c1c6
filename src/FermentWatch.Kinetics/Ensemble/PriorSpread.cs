namespace FermentWatch.Kinetics.Ensemble;

/// <summary>Standard deviations of the prior: of the logarithm where a factor is meant, else in the unit named.</summary>
internal sealed record PriorSpread
{
    /// <summary>All rates of a kitchen's flora together, ln.</summary>
    public double LnRate { get; init; } = 0.20;

    /// <summary>First count of the starters, log10.</summary>
    public double StartersLog10 { get; init; } = 0.55;

    /// <summary>First count of the finishers, log10.</summary>
    public double FinishersLog10 { get; init; } = 0.9;

    /// <summary>Growth of the finishers beside that of all, ln.</summary>
    public double LnFinisherRate { get; init; } = 0.35;

    /// <summary>Lag, ln.</summary>
    public double LnLag { get; init; } = 0.35;

    /// <summary>Sugar, ln.</summary>
    public double LnSugar { get; init; } = 0.15;

    /// <summary>Strong-ion difference, ln.</summary>
    public double LnStrongIons { get; init; } = 0.1;

    /// <summary>Native acids other than the side chains, ln.</summary>
    public double LnNativeAcids { get; init; } = 0.12;

    /// <summary>Exchange between pieces and brine, ln.</summary>
    public double LnExchange { get; init; } = 0.4;

    /// <summary>Undissociated acid that halves growth, ln.</summary>
    public double LnAcidTolerance { get; init; } = 0.15;

    /// <summary>pH that halves growth.</summary>
    public double HalfPh { get; init; } = 0.12;

    /// <summary>Acid made without growth, ln.</summary>
    public double LnUpkeep { get; init; } = 0.25;

    /// <summary>Acid made by a starter cell, ln.</summary>
    public double LnStarterAcid { get; init; } = 0.3;

    /// <summary>Pace of a jar at any one time, ln.</summary>
    public double LnPace { get; init; } = 0.34;

    /// <summary>Correlation of the pace from knot to knot.</summary>
    public double PaceMemory { get; init; } = 0.6;

    /// <summary>Pace once acid has come, ln.</summary>
    public double LnStagePace { get; init; } = 0.55;

    /// <summary>What the model itself is off by, pH at a knot.</summary>
    public double PhOffset { get; init; } = 0.11;

    /// <summary>What the model itself is off by, ln of the acidity.</summary>
    public double LnAcidityOffset { get; init; } = 0.06;
}
