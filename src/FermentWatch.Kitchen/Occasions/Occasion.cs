namespace FermentWatch.Kitchen.Occasions;

/// <summary>Something to be told of once.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Subject">Id of the jar, place or sensor it is about.</param>
/// <param name="Cause">What brought it about; the same cause is never told twice.</param>
/// <param name="Headline">What, in a few words, without the jars.</param>
/// <param name="Jars">Which: numbers of the jars concerned; may be empty where it is about a sensor.</param>
/// <param name="Body">Why now, and what to do.</param>
public sealed record Occasion(OccasionKind Kind, Guid Subject, string Cause, string Headline, IReadOnlyList<int> Jars, string Body)
{
    /// <summary>True for a state that goes on, such as warmth: while it does it is one cause; after a day without it, it is another.</summary>
    public bool Lasting { get; init; }

    /// <summary>Who knows already, having seen it; null where nobody does.</summary>
    public string? KnownTo { get; init; }

    /// <summary>The name of the one jar it is about; null where it is about several or none.</summary>
    public string? JarName { get; init; }
}
