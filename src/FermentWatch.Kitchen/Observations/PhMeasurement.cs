using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Kitchen.Observations;

/// <summary>A pH somebody measured.</summary>
public sealed class PhMeasurement : Observation
{
    /// <summary>pH, 2 to 9.</summary>
    public required double Ph { get; init; }

    public required PhMethod Method { get; init; }

    /// <summary>Whether the meter or probe was checked in buffer on the same day.</summary>
    public bool CheckedInBuffer { get; init; }

    /// <summary>Whether the brine was pale enough to read a strip.</summary>
    public bool PaleBrine { get; init; }

    /// <summary>Whether solids and brine were blended; large pieces need it.</summary>
    public bool Blended { get; init; }

    /// <summary>How warm the sample was, Celsius; null where nobody said.</summary>
    public double? SampleCelsius { get; init; }

    /// <summary>All that it says, as one text; ids of corrections are made of it, so that it stays as it is.</summary>
    public string Content => FormattableString.Invariant($"{Ph:R} {Method} {PaleBrine} {CheckedInBuffer} {Blended} {SampleCelsius} {Note}");

    /// <summary>The same reading under another id.</summary>
    public PhMeasurement Under(Guid id) => new()
    {
        Id = id, JarId = JarId, At = At, EnteredAt = EnteredAt, By = By, Note = Note, Ph = Ph, Method = Method,
        CheckedInBuffer = CheckedInBuffer, PaleBrine = PaleBrine, Blended = Blended, SampleCelsius = SampleCelsius,
    };
}

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

/// <summary>Somebody tasted it.</summary>
public sealed class Taste : Observation
{
    public required TasteVerdict Verdict { get; init; }
}

/// <summary>How a taste compares with how sour the household wants it.</summary>
public enum TasteVerdict
{
    NotYet = 1,
    Nearly = 2,
    Right = 3,
    PastIt = 4,
}
