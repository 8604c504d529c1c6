using NodaTime;

namespace FermentWatch.Service.Pages.Rounds;

/// <summary>One box of a week sheet that was filled in.</summary>
/// <param name="Number">Number of the jar.</param>
/// <param name="Date">The date it stands under.</param>
/// <param name="Mark">What was written.</param>
public sealed record WeekTick(int Number, LocalDate Date, WeekMark Mark);
