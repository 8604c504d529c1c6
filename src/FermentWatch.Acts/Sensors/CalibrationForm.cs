namespace FermentWatch.Acts.Sensors;

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

/// <summary>What a probe showed in one buffer, as typed. All empty is no buffer.</summary>
public sealed record BufferForm
{
    /// <summary>The buffer by its pH at 25 C, as the bottle says: <c>4.00</c>, <c>6.86</c>, <c>7.00</c>, <c>9.18</c>, <c>10.01</c>; or its name.</summary>
    public string? Buffer { get; init; }

    /// <summary>What the probe showed, in millivolts or pH.</summary>
    public string? Shown { get; init; }

    /// <summary>The temperature of the buffer.</summary>
    public string? Temperature { get; init; }
}
