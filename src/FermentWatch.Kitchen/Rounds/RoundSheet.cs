using FermentWatch.Kitchen.Places;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>What is to be looked at on one date, by shelf in shelf order.</summary>
public sealed record RoundSheet(LocalDate Date, IReadOnlyList<RoundShelf> Shelves)
{
    public IEnumerable<RoundJar> Jars => Shelves.SelectMany(shelf => shelf.Jars);
}

/// <summary>The jars of one place, by number.</summary>
public sealed record RoundShelf(Place Place, IReadOnlyList<RoundJar> Jars);
