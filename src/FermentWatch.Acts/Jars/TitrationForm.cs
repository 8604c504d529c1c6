namespace FermentWatch.Acts.Jars;

/// <summary>What somebody typed to enter a titration, as typed: the per cent, or what was used for how much brine.</summary>
public sealed record TitrationForm
{
    /// <summary>Titratable acidity as lactic acid, per cent, where it was worked out already.</summary>
    public string? Percent { get; init; }

    /// <summary>Base used, mL.</summary>
    public string? BaseMillilitres { get; init; }

    /// <summary>Strength of the base, N (mol/L); empty is 0.1.</summary>
    public string? BaseNormality { get; init; }

    /// <summary>Brine titrated, mL; empty is 10.</summary>
    public string? SampleMillilitres { get; init; }

    /// <summary>When, on the household's clock; empty is now.</summary>
    public string? At { get; init; }

    public string? Note { get; init; }
}
