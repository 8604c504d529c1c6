using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Rounds;

/// <summary>Enters looks and sightings of former days from the week sheet; what somebody answered for before stays as it is.</summary>
[OpenToChildren, OpenToRecorders]
public sealed class EnterWeekSheet(RoundFiling filing, IHouseholdBook households, TimeProvider clock)
{
    /// <param name="ticks">The boxes that were filled in.</param>
    /// <param name="mark">Who enters them.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<AnswerOutcome> DoAsync(IReadOnlyCollection<WeekTick> ticks, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        return await filing.LooksAsync(mark, (_, kept) =>
        {
            var byNumber = kept.ToDictionary(jar => jar.Number);
            var looks = ticks.Distinct().Where(tick => byNumber.ContainsKey(tick.Number))
                .Select(tick => WeekLook.Of(byNumber[tick.Number], tick, household, mark, clock.GetUtcNow().ToInstant())).OfType<Observation>();
            return new AnswerOutcome([.. looks], [], []);
        }, cancellationToken);
    }
}

/// <summary>A box of the week sheet as an answer at the hour of that day's round.</summary>
internal static class WeekLook
{
    /// <summary>The look or the sighting; null where the date is not over yet, before the packing, not in the calendar, or answered for
    /// already.</summary>
    public static Observation? Of(Jar jar, WeekTick tick, Household household, EntryMark mark, Instant now)
    {
        LocalDate date = tick.Date;
        if (RoundCalendar.At(date, household.RoundAt, household.Zone) is not { } due)
            return null;
        LocalDate packed = jar.PackedAt.InZone(household.Zone).Date, today = now.InZone(household.Zone).Date;
        if (date > today || date < packed || jar.Stage != JarStage.Fermenting || Answered.On(jar, date, household.Zone))
            return null;
        Guid id = Guid.CreateVersion7(now.ToDateTimeOffset());
        Instant at = Instant.Min(now, Instant.Max(due, jar.PackedAt));
        return tick.Mark.Seen is { } kind
            ? new Sighting { Id = id, JarId = jar.Id, At = at, EnteredAt = now, By = mark.By, ById = mark.Who.AccountId, Kind = kind,
                SeenAs = mark.Role }
            : new Look { Id = id, JarId = jar.Id, At = at, EnteredAt = now, By = mark.By, ById = mark.Who.AccountId, Opened = false };
    }
}

/// <summary>What is written into a box of the week sheet.</summary>
/// <param name="Word">As it stands on paper.</param>
/// <param name="Seen">What it says was seen; null for all well.</param>
public sealed record WeekMark(string Word, SightingKind? Seen)
{
    /// <summary>Every mark, all well first.</summary>
    public static readonly IReadOnlyList<WeekMark> All =
    [
        new("✓", null), new("up", SightingKind.PiecesUp), new("film", SightingKind.Film), new("fuzz", SightingKind.FuzzOrUnsure),
        new("low", SightingKind.BrineLow), new("gas", SightingKind.Gas), new("smell", SightingKind.OffSmell), new("slime", SightingKind.Slime),
    ];
}

/// <summary>One box of a week sheet that was filled in.</summary>
/// <param name="Number">Number of the jar.</param>
/// <param name="Date">The date it stands under.</param>
/// <param name="Mark">What was written.</param>
public sealed record WeekTick(int Number, LocalDate Date, WeekMark Mark);
