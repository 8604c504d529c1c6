using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Guides;

/// <summary>What to do about a sighting.</summary>
/// <param name="Kind">The sighting.</param>
/// <param name="Name">What people call it, in a few words.</param>
/// <param name="Now">What to do now, in three lines.</param>
/// <param name="Discard">When to throw it out.</param>
/// <param name="Caution">The caution that goes with it.</param>
/// <param name="Sources">Who says what; where they disagree, each of them.</param>
public sealed record SightingGuide(
    SightingKind Kind, string Name, IReadOnlyList<string> Now, string Discard, string Caution, IReadOnlyList<string> Sources);
