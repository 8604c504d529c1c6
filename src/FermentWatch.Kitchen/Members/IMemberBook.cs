using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>The record of who belongs to the household and who does the round when.</summary>
public interface IMemberBook
{
    /// <summary>Everybody who may sign in or has days or quiet hours, by name.</summary>
    Task<IReadOnlyList<Member>> AllAsync(CancellationToken cancellationToken);

    /// <summary>Writes a person's days and quiet hours.</summary>
    Task WriteAsync(Duty duty, CancellationToken cancellationToken);

    /// <summary>Members, with hand-overs and pauses that reach a date or lie after it.</summary>
    Task<Roster> RosterAsync(LocalDate from, CancellationToken cancellationToken);

    /// <summary>Writes who does the round of a date; the last word holds.</summary>
    Task HandOverAsync(HandOver handOver, CancellationToken cancellationToken);

    /// <summary>Takes a hand-over back.</summary>
    Task TakeBackAsync(LocalDate date, CancellationToken cancellationToken);

    /// <summary>Pauses that reach a date or lie after it, the earliest first.</summary>
    Task<IReadOnlyList<RoundPause>> PausesAsync(LocalDate from, CancellationToken cancellationToken);

    /// <summary>Adds a pause, or writes until when one that is there lasts.</summary>
    Task PauseAsync(RoundPause pause, CancellationToken cancellationToken);
}
