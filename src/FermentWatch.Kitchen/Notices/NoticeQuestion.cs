using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>What a notice asks: whether all is well with these jars on this date.</summary>
/// <param name="Date">The date it is about.</param>
/// <param name="Until">End of that date: an answer given later would say something of another day.</param>
/// <param name="Shelves">The jars by shelf, in shelf order; at least one.</param>
public sealed record NoticeQuestion(LocalDate Date, Instant Until, IReadOnlyList<AskedShelf> Shelves);
