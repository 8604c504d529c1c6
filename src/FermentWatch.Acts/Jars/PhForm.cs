namespace FermentWatch.Acts.Jars;

/// <summary>What somebody typed to enter a pH, as typed.</summary>
public sealed record PhForm
{
    /// <summary>The pH, 2 to 9.</summary>
    public string? Ph { get; init; }

    /// <summary><c>meter</c>, <c>probe</c> or <c>strip</c>.</summary>
    public string? Method { get; init; }

    /// <summary>Whether the meter or probe was checked in buffer on the same day.</summary>
    public bool CheckedInBuffer { get; init; }

    /// <summary>Whether the brine was pale enough to read a strip; must be said of a strip.</summary>
    public bool? PaleBrine { get; init; }

    /// <summary>Whether solids and brine were blended.</summary>
    public bool Blended { get; init; }

    /// <summary>When, on the household's clock (<c>2026-10-04</c> or <c>2026-10-04T18:30</c>); empty is now.</summary>
    public string? At { get; init; }

    /// <summary>How warm the sample was, in the household's unit where none is typed; empty where nobody looked.</summary>
    public string? SampleTemperature { get; init; }

    public string? Note { get; init; }
}
