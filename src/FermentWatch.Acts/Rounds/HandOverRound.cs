using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Rounds;

/// <summary>Hands the round of one date over to somebody else, or takes it back.</summary>
[OpenToChildren, OpenToRecorders]
public sealed class HandOverRound(IMemberBook members)
{
    /// <summary>Whose round it is on which day, from a date on.</summary>
    public Task<Roster> RosterAsync(LocalDate from, CancellationToken cancellationToken) => members.RosterAsync(from, cancellationToken);

    /// <summary>Hands it over; a name that is nobody's in the household changes nothing.</summary>
    /// <param name="date">The date of the round.</param>
    /// <param name="somebody">Who does it instead; empty to take it back.</param>
    /// <param name="by">Who hands it over.</param>
    /// <param name="cancellationToken">Gives up before anything is written.</param>
    public async Task DoAsync(LocalDate date, string? somebody, string by, CancellationToken cancellationToken)
    {
        if (string.IsNullOrEmpty(somebody))
            await members.TakeBackAsync(date, cancellationToken);
        else if ((await members.RosterAsync(date, cancellationToken)).Members.Any(member => member.Name == somebody))
            await members.HandOverAsync(new HandOver { Date = date, Person = somebody, By = by }, cancellationToken);
    }
}

/// <summary>Not tasting this week, or again from today on.</summary>
[OpenToRecorders]
public sealed class PauseTasting(IHouseholdBook households, WrittenDown written, TimeProvider clock)
{
    private const int Days = 7;

    public async Task DoAsync(bool paused, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        household.TastingAgainFrom = paused ? clock.GetUtcNow().ToInstant().InZone(household.Zone).Date.PlusDays(Days) : null;
        await households.WriteAsync(household, cancellationToken);
        written.SayFacts();
    }
}
