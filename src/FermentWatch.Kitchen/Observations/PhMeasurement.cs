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
