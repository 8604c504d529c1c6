using FermentWatch.Kitchen.Notices;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>The record of rounds.</summary>
public interface IRoundBook
{
    /// <summary>The round of the latest date, or null if there never was one.</summary>
    Task<Round?> LastAsync(CancellationToken cancellationToken);

    /// <summary>Rounds from a date on, by date.</summary>
    Task<IReadOnlyList<Round>> SinceAsync(LocalDate date, CancellationToken cancellationToken);

    /// <summary>
    /// Records a round and queues its notices in one transaction. False, and nothing is written, if the date has one already.
    /// </summary>
    Task<bool> OpenAsync(Round round, IReadOnlyList<Notice> notices, CancellationToken cancellationToken);

    /// <summary>
    /// Takes back what a clock that was ahead wrote, in one transaction: rounds opened after now, what was told after now, and notices that
    /// are due after now; notices that were put off into that time are tried now.
    /// </summary>
    /// <param name="now">The present, by a clock that is right again.</param>
    /// <param name="cancellationToken">Gives up before anything is written.</param>
    Task TakeBackAfterAsync(Instant now, CancellationToken cancellationToken);
}

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

    /// <summary>Jars that were asked to be tasted on it, by id; each stood for its lot.</summary>
    public IReadOnlyList<Guid> TasteAsked { get; init; } = [];

    /// <summary>Jars past their tasting days that were asked about as a decision on it, by id; each stood for its lot.</summary>
    public IReadOnlyList<Guid> DecideAsked { get; init; } = [];
}
