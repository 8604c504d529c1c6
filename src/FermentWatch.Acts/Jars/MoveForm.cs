namespace FermentWatch.Acts.Jars;

/// <summary>What somebody typed to say that a jar stands somewhere else now.</summary>
public sealed record MoveForm
{
    /// <summary>Name of the place.</summary>
    public string? Place { get; init; }

    /// <summary>Since when, on the household's clock; empty is now.</summary>
    public string? At { get; init; }
}
