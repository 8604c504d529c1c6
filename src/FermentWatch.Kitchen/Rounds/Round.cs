using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>The morning round of one local date. There is at most one for each date.</summary>
public sealed class Round
{
    /// <summary>The date on the household's calendar; the key.</summary>
    public required LocalDate Date { get; init; }

    /// <summary>When it was promised.</summary>
    public required Instant DueAt { get; init; }

    /// <summary>When it was opened; later than due if the service was away.</summary>
    public required Instant OpenedAt { get; init; }

    /// <summary>True if the whole day had passed before the service could open it; nobody is told of it then but by the next round.</summary>
    public required bool Missed { get; init; }
}
