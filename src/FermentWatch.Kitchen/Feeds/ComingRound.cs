using NodaTime;

namespace FermentWatch.Kitchen.Feeds;

/// <summary>The round of a date from today on, as things stand.</summary>
/// <param name="Date">The date.</param>
/// <param name="DueAt">The household's hour on it.</param>
/// <param name="Title">The heading of its message.</param>
/// <param name="Body">The message.</param>
/// <param name="DoneAt">When the last of its jars was answered for; null where some wait.</param>
/// <param name="RevisedAt">When what this is drawn from last changed.</param>
public sealed record ComingRound(LocalDate Date, Instant DueAt, string Title, string Body, Instant? DoneAt, Instant RevisedAt);
