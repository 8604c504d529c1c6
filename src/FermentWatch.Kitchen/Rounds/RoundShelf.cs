using FermentWatch.Kitchen.Places;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>The jars of one place, by number.</summary>
public sealed record RoundShelf(Place Place, IReadOnlyList<RoundJar> Jars);
