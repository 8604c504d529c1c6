using FermentWatch.Kitchen.Households;
using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>Somebody of the household.</summary>
/// <param name="Name">The name the household uses.</param>
/// <param name="Role">What this person may do.</param>
/// <param name="Duty">Days and quiet hours.</param>
public sealed record Member(string Name, MemberRole Role, Duty Duty)
{
    /// <summary>The account; null of somebody who cannot sign in.</summary>
    public Guid? AccountId { get; init; }

    /// <summary>Whether this person may sign in; others are told of things, and decide nothing.</summary>
    public bool SignsIn { get; init; } = true;

    /// <summary>Links in messages due up to then open nothing any more; null where none were closed.</summary>
    public Instant? DoorsClosedAt { get; init; }

    /// <summary>Whether this person is known as a child, and is told as one.</summary>
    public bool IsChild => SignsIn && Role == MemberRole.Child;

    /// <summary>Whether something was made by a person who is no adult of the household any more, so that an adult has to keep it or withdraw
    /// it.</summary>
    /// <param name="madeBy">The name of who made it; null where nobody is known to have.</param>
    /// <param name="madeById">The account of who made it.</param>
    /// <param name="members">Those on record.</param>
    public static bool IsOrphan(string? madeBy, Guid? madeById, IReadOnlyList<Member> members) =>
        madeBy is not null && !members.Any(member => new Person(madeBy, madeById).Is(member.AccountId) && member.Role == MemberRole.Adult);

    /// <summary>Somebody of whom nothing was written down: told on every day, with no quiet hours, and never an adult.</summary>
    public static Member Unknown(string name) => new(name, MemberRole.Child, new Duty { Person = name }) { SignsIn = false };
}

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
