using FermentWatch.Kitchen.Households;
using NodaTime;

namespace FermentWatch.Kitchen.Calendar;

/// <summary>What a person's calendar shows.</summary>
/// <param name="Household">The household.</param>
/// <param name="Tastes">The next tasting of each jar, by number.</param>
/// <param name="Rounds">The rounds of the coming days that fall to this person, by date.</param>
public sealed record ComingDays(Household Household, IReadOnlyList<ComingTaste> Tastes, IReadOnlyList<ComingRound> Rounds);

/// <summary>The round of a date from today on, as things stand.</summary>
/// <param name="Date">The date.</param>
/// <param name="DueAt">The household's hour on it.</param>
/// <param name="Title">The heading of its message.</param>
/// <param name="Body">The message.</param>
/// <param name="DoneAt">When the last of its jars was answered for; null where some wait.</param>
/// <param name="RevisedAt">When what this is drawn from last changed.</param>
public sealed record ComingRound(LocalDate Date, Instant DueAt, string Title, string Body, Instant? DoneAt, Instant RevisedAt);

/// <summary>The day on which a jar is tasted next.</summary>
/// <param name="JarId">The jar.</param>
/// <param name="Number">Its number.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Date">The first day of tasting; today where that is past.</param>
/// <param name="Words">When to taste, in words.</param>
/// <param name="RevisedAt">When what this is drawn from last changed: a fact of the jar, or its forecast.</param>
public sealed record ComingTaste(Guid JarId, int Number, string Name, string Place, LocalDate Date, string Words, Instant RevisedAt);
