using NodaTime;

namespace FermentWatch.Kitchen.Probes;

/// <summary>What a sensor's probe showed in two or three buffers, as it was entered. It holds until the next one, unless it is taken back.</summary>
public sealed class ProbeCheck
{
    public required Guid Id { get; init; }

    public required Guid SensorId { get; init; }

    /// <summary>When the probe stood in the buffers.</summary>
    public required Instant At { get; init; }

    public required Instant EnteredAt { get; init; }

    /// <summary>Who did it.</summary>
    public required string By { get; init; }

    /// <summary>What it showed; a probe that shows pH is entered as the potential of an ideal one, see <see
    /// cref="BufferReading.OfShownPh"/>.</summary>
    public required IReadOnlyList<BufferReading> Points { get; init; }

    /// <summary>When it was taken back; null while it stands.</summary>
    public Instant? VoidedAt { get; set; }

    /// <summary>Who took it back.</summary>
    public string? VoidedBy { get; set; }

    /// <summary>The calibration it comes to.</summary>
    /// <exception cref="InvalidOperationException">The points tell none; they are looked at before they are filed.</exception>
    public ProbeCalibration Calibration =>
        ProbeCalibration.Of(Points, At, out string? wrong) ?? throw new InvalidOperationException($"A filed calibration tells none. {wrong}");
}

/// <summary>Why a calibration is not accepted. More than one may hold.</summary>
[Flags]
public enum CalibrationFaults
{
    /// <summary>It is accepted.</summary>
    None = 0,

    /// <summary>The potential at pH 7 is more than 30 mV from zero.</summary>
    Offset = 1,

    /// <summary>The slope is below 90 % of the ideal: the glass is worn or dirty, or a buffer is spoilt.</summary>
    SlopeLow = 2,

    /// <summary>The slope is above 105 % of the ideal: a buffer or a temperature is not what it was said to be.</summary>
    SlopeHigh = 4,

    /// <summary>Three buffers do not lie on one line.</summary>
    Bent = 8,
}
