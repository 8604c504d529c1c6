namespace FermentWatch.Kitchen.Observations;

/// <summary>An acidity somebody titrated in the brine. It teaches the forecast and says nothing of the acid line.</summary>
public sealed class Titration : Observation
{
    /// <summary>Titratable acidity as lactic acid, g in 100 mL, 0 to 5.</summary>
    public required double PercentLactic { get; init; }

    /// <summary>Base used, mL; null where the per cent was entered as such, as the next two.</summary>
    public double? BaseMillilitres { get; init; }

    /// <summary>Strength of the base, mol/L.</summary>
    public double? BaseNormality { get; init; }

    /// <summary>Brine titrated, mL.</summary>
    public double? SampleMillilitres { get; init; }

    /// <summary>The same under another id.</summary>
    public Titration Under(Guid id) => new()
    {
        Id = id, JarId = JarId, At = At, EnteredAt = EnteredAt, By = By, Note = Note, PercentLactic = PercentLactic,
        BaseMillilitres = BaseMillilitres, BaseNormality = BaseNormality, SampleMillilitres = SampleMillilitres,
    };

    /// <summary>All that it says, as one text; ids of corrections are made of it, so that it stays as it is.</summary>
    public string Content => FormattableString.Invariant($"{PercentLactic:R} {BaseMillilitres} {BaseNormality} {SampleMillilitres} {Note}");
}
