using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Away;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace FermentWatch.Acts.Rounds;

/// <summary>What jars will need in days away, and pauses of the round.</summary>
public sealed class PauseRounds(OccasionFactsReader reading, IHouseholdBook households, IMemberBook members, TimeProvider clock)
{
    private const int LongestDays = 60;

    private Instant Now => clock.GetUtcNow().ToInstant();

    /// <summary>Reads two dates; what was wrong, or nothing.</summary>
    public async Task<(LocalDate From, LocalDate Until, IReadOnlyList<Refusal> Refusals)> ReadAsync(AwayInput input,
        CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        LocalDate today = Now.InZone(household.Zone).Date;
        var reader = new FieldReader();
        LocalDate from = ReadDate("first day away", input.From, reader), until = ReadDate("back on", input.Until, reader);
        if (reader.Refusals.Count == 0 && from < today)
            reader.Refuse("first day away", input.From, "today or a later date would be right");
        else if (reader.Refusals.Count == 0 && (until <= from || Period.DaysBetween(from, until) > LongestDays))
            reader.Refuse("back on", input.Until, $"a date 1 to {LongestDays} days after the first day away would be right");
        return (from, until, reader.Refusals);
    }

    /// <summary>What jars will need.</summary>
    public async Task<IReadOnlyList<AwayNeed>> NeedsAsync(LocalDate from, LocalDate until, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        OccasionFacts facts = await reading.ReadAsync(household, await members.RosterAsync(from, cancellationToken), Now, cancellationToken);
        return new BeforeYouGo(facts, from, until).Needs();
    }

    /// <summary>Pauses that hold or are to come.</summary>
    public async Task<IReadOnlyList<RoundPause>> PausesAsync(CancellationToken cancellationToken)
    {
        LocalDate today = Now.InZone((await households.ReadAsync(cancellationToken)).Zone).Date;
        return [.. (await members.PausesAsync(today, cancellationToken)).Where(pause => pause.Until > today && pause.Until > pause.From)];
    }

    public Task PauseAsync(LocalDate from, LocalDate until, string by, CancellationToken cancellationToken) =>
        members.PauseAsync(new RoundPause { Id = Guid.CreateVersion7(clock.GetUtcNow()), From = from, Until = until, By = by }, cancellationToken);

    /// <summary>Takes the rounds up again: today, or not at all where the pause has not begun.</summary>
    public async Task EndAsync(Guid pauseId, CancellationToken cancellationToken)
    {
        LocalDate today = Now.InZone((await households.ReadAsync(cancellationToken)).Zone).Date;
        if ((await PausesAsync(cancellationToken)).FirstOrDefault(pause => pause.Id == pauseId) is not { } pause)
            return;
        pause.Until = LocalDate.Max(pause.From, today);
        await members.PauseAsync(pause, cancellationToken);
    }

    private static LocalDate ReadDate(string field, string? typed, FieldReader reader)
    {
        if (LocalDatePattern.Iso.Parse((typed ?? "").Trim()) is { Success: true, Value: var date })
            return date;
        reader.Refuse(field, typed, "a date would be right, such as 2026-10-24");
        return default;
    }
}

/// <summary>Days away, as typed.</summary>
public sealed class AwayInput
{
    /// <summary>The first date away, ISO.</summary>
    public string? From { get; set; }

    /// <summary>The date of coming back, ISO.</summary>
    public string? Until { get; set; }

    /// <summary>The pause that is ended; empty for a new one.</summary>
    public string? Ended { get; set; }
}
