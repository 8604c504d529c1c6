namespace FermentWatch.Service.Pages.Sensors;

/// <summary>What somebody typed of a probe in buffers, as typed.</summary>
public sealed record CalibrationForm
{
    /// <summary>What it shows: <c>mV</c> or <c>pH</c>.</summary>
    public string? Shows { get; init; }

    /// <summary>Two or three buffers.</summary>
    public IReadOnlyList<BufferForm> Buffers { get; init; } = [];

    /// <summary>When, on the household's clock; empty is now.</summary>
    public string? At { get; init; }
}
