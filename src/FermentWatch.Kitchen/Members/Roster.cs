using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>Who does the round on which date.</summary>
/// <param name="members">Those of whom something is written down.</param>
/// <param name="handOvers">Dates on which somebody else does it.</param>
/// <param name="pauses">Dates on which nobody does.</param>
public sealed class Roster(IReadOnlyList<Member> members, IReadOnlyList<HandOver> handOvers, IReadOnlyList<RoundPause> pauses)
{
    /// <summary>Everybody of whom something is written down.</summary>
    public IReadOnlyList<Member> Members => members;

    /// <summary>A person by name; somebody not written down is told on every day, and no adult.</summary>
    public Member Of(string person) => members.FirstOrDefault(member => member.Name == person) ?? Member.Unknown(person);

    /// <summary>Whether a person does the round on a date.</summary>
    public bool IsOn(string person, LocalDate date) => handOvers.FirstOrDefault(each => each.Date == date) is { } instead
        ? instead.Person == person
        : Of(person).Duty.Days.Hold(date);

    /// <summary>Those written down who do the round on a date; empty where it falls to nobody.</summary>
    public IReadOnlyList<Member> OnDuty(LocalDate date)
    {
        if (handOvers.FirstOrDefault(each => each.Date == date) is { } instead)
            return [Of(instead.Person)];
        return [.. members.Where(member => member.Duty.Days.Hold(date))];
    }

    /// <summary>The pause a date lies in; null where the round is held.</summary>
    public RoundPause? PauseOn(LocalDate date) => pauses.FirstOrDefault(pause => pause.Holds(date));
}

/// <summary>On which days a person does the round, and when this person is sent nothing.</summary>
public sealed class Duty
{
    /// <summary>The name the household uses; the key.</summary>
    public required string Person { get; init; }

    public Weekdays Days { get; set; } = Weekdays.All;

    /// <summary>Begin of the quiet hours; null where there are none.</summary>
    public LocalTime? QuietFrom { get; set; }

    /// <summary>End of the quiet hours; null where there are none.</summary>
    public LocalTime? QuietUntil { get; set; }

    /// <summary>The quiet hours; null where there are none.</summary>
    public QuietHours? Quiet => QuietFrom is { } from && QuietUntil is { } until && from != until ? new QuietHours(from, until) : null;
}
