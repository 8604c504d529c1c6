using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>What one of the first days looks like, and what to do.</summary>
/// <param name="Day">1 to 7; the day of packing is day 0.</param>
/// <param name="Date">Its date on the household's calendar.</param>
/// <param name="Looks">What is normal to see.</param>
/// <param name="Do">What to do that day.</param>
public sealed record DayNote(int Day, LocalDate Date, string Looks, string Do);
