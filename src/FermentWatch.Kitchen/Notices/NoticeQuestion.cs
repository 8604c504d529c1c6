using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>What a notice asks: whether all is well with these jars on this date.</summary>
/// <param name="Date">The date it is about.</param>
/// <param name="Until">End of that date: an answer given later would say something of another day.</param>
/// <param name="Shelves">The jars by shelf, in shelf order; at least one.</param>
public sealed record NoticeQuestion(LocalDate Date, Instant Until, IReadOnlyList<AskedShelf> Shelves)
{
    /// <summary>Numbers of its jars that nobody has answered for on its date.</summary>
    public IReadOnlySet<int> Waiting(IEnumerable<Jar> kept, DateTimeZone zone) => kept
        .Where(jar => jar.Stage == JarStage.Fermenting && !Answered.On(jar, Date, zone))
        .Select(jar => jar.Number).Intersect(Shelves.SelectMany(shelf => shelf.Jars)).ToHashSet();
}
