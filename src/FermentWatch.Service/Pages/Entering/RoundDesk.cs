using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Service.Pages.Rounds;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Pages.Entering;

/// <summary>Where answers to the round are handed in, by the pages and by the API. After each the forecasts are renewed.</summary>
public sealed class RoundDesk(
    IHouseholdBook households, IJarBook jars, IPlaceBook places, RoundPass rounds, ForecastRenewal renewal, TimeProvider clock) : IDisposable
{
    /// <summary>One answer at a time: two people at once must not both find a jar not yet looked at.</summary>
    private readonly SemaphoreSlim _turn = new(1, 1);

    private Instant Now => clock.GetUtcNow().ToInstant();

    /// <summary>What is to be looked at today, as things stand.</summary>
    public async Task<RoundSheet> TodayAsync(CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        return await rounds.SheetAsync(household, Now.InZone(household.Zone).Date, cancellationToken);
    }

    /// <summary>All well for a shelf, except these numbers.</summary>
    /// <param name="shelf">Id of the place; null for every shelf.</param>
    /// <param name="except">Numbers that are left open.</param>
    /// <param name="opened">Whether the jars were opened.</param>
    /// <param name="mark">Identity of the answer and who gives it.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<AnswerOutcome> AllWellAsync(Guid? shelf, IReadOnlySet<int> except, bool opened, EntryMark mark, CancellationToken cancellationToken)
    {
        RoundSheet sheet = await TodayAsync(cancellationToken);
        var wanted = sheet.Shelves.Where(each => shelf is null || each.Place.Id == shelf)
            .SelectMany(each => each.Jars).Select(each => each.Jar.Number).Where(number => !except.Contains(number)).ToHashSet();
        return await AnswerAsync(mark, (answering, kept) => answering.AllWell(kept.Where(jar => wanted.Contains(jar.Number)), opened), cancellationToken);
    }

    /// <summary>All well for the jars that stood on a page, each opened or looked at through the glass.</summary>
    /// <param name="numbers">Numbers of the jars.</param>
    /// <param name="opened">Numbers of those of them that were opened.</param>
    /// <param name="mark">Identity of the answer and who gives it.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public Task<AnswerOutcome> AllWellAsync(IReadOnlySet<int> numbers, IReadOnlySet<int> opened, EntryMark mark, CancellationToken cancellationToken) =>
        AnswerAsync(mark, (answering, kept) =>
        {
            var asked = kept.Where(jar => numbers.Contains(jar.Number)).ToLookup(jar => opened.Contains(jar.Number));
            AnswerOutcome glass = answering.AllWell(asked[false], opened: false), open = answering.AllWell(asked[true], opened: true);
            return new AnswerOutcome([.. glass.Observations, .. open.Observations], [.. glass.Known, .. open.Known], []);
        }, cancellationToken);

    /// <summary>Looks and sightings of former days, entered afterwards from the week sheet; what somebody answered for before stays as it is.</summary>
    /// <param name="ticks">The boxes that were filled in.</param>
    /// <param name="mark">Who enters them.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<AnswerOutcome> EnterWeekAsync(IReadOnlyCollection<WeekTick> ticks, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        return await AnswerAsync(mark, (_, kept) =>
        {
            var byNumber = kept.ToDictionary(jar => jar.Number);
            var looks = ticks.Distinct().Where(tick => byNumber.ContainsKey(tick.Number))
                .Select(tick => WeekLook.Of(byNumber[tick.Number], tick, household, mark, Now)).OfType<Observation>();
            return new AnswerOutcome([.. looks], [], []);
        }, cancellationToken);
    }

    /// <summary>Something was seen.</summary>
    public Task<AnswerOutcome> SeenAsync(int number, SightingKind kind, string? note, EntryMark mark, CancellationToken cancellationToken) =>
        AnswerOneAsync(number, mark, (answering, jar) => answering.Seen(jar, kind, note), cancellationToken);

    /// <summary>Somebody tasted.</summary>
    public Task<AnswerOutcome> TastedAsync(int number, TasteVerdict verdict, EntryMark mark, CancellationToken cancellationToken) =>
        AnswerOneAsync(number, mark, (answering, jar) => ChildRules.Tasting(mark.Role, jar) is { } refusal ? new AnswerOutcome([], [], [refusal]) : answering.Tasted(jar, verdict), cancellationToken);

    /// <summary>Something was done about a jar: trouble seen to, or left standing.</summary>
    public Task<AnswerOutcome> HandledAsync(int number, HandlingKind kind, EntryMark mark, CancellationToken cancellationToken) =>
        AnswerOneAsync(number, mark, (answering, jar) => ChildRules.Settling(mark.Role) is { } refusal ? new AnswerOutcome([], [], [refusal]) : answering.Handled(jar, kind), cancellationToken);

    /// <summary>Not tasting this week, or again from today on.</summary>
    public async Task PauseTastingAsync(bool paused, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        household.TastingAgainFrom = paused ? Now.InZone(household.Zone).Date.PlusDays(7) : null;
        await households.WriteAsync(household, cancellationToken);
        renewal.WakeLoops();
    }

    /// <summary>Into the cold, finished or thrown out; into the cold also names the place.</summary>
    public async Task<AnswerOutcome> MovedAsync(int number, JarStage stage, string? why, Guid? coldPlace, EntryMark mark, CancellationToken cancellationToken)
    {
        if (ChildRules.Moving(mark.Role) is { } refusal)
            return new AnswerOutcome([], [], [refusal]);
        AnswerOutcome outcome = await AnswerOneAsync(number, mark, (answering, jar) => answering.Moved(jar, stage, why), cancellationToken);
        if (stage == JarStage.Cold && outcome.Observations.Count == 1)
        {
            Guid? place = coldPlace ?? (await places.AllAsync(cancellationToken)).FirstOrDefault(each => each.Typical == TypicalTemperature.ColdStore)?.Id;
            Observation change = outcome.Observations[0];
            if (place is { } cold)
                await jars.MoveAsync(MoveOf(change, cold), cancellationToken);
            await renewal.RunAsync(number, cancellationToken);
        }
        return outcome;
    }

    /// <summary>The move that goes with a change of stage; its id is made of the change's, so that it can be taken back with it.</summary>
    public static JarPlacement MoveOf(Observation change, Guid place) =>
        new() { Id = AnswerId.Of(change.Id, place), JarId = change.JarId, PlaceId = place, From = change.At };

    private async Task<AnswerOutcome> AnswerOneAsync(
        int number, EntryMark mark, Func<Answering, Jar, AnswerOutcome> answer, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is null)
            return new AnswerOutcome([], [], [new Refusal("jar", number.ToString(System.Globalization.CultureInfo.InvariantCulture), "the number of a jar would be right")]);
        return await AnswerAsync(mark, (answering, all) => answer(answering, all.First(jar => jar.Number == number)), cancellationToken, number);
    }

    private async Task<AnswerOutcome> AnswerAsync(
        EntryMark mark, Func<Answering, IReadOnlyList<Jar>, AnswerOutcome> answer, CancellationToken cancellationToken, int? one = null)
    {
        AnswerOutcome outcome = await FileAsync(mark, answer, one, cancellationToken);
        // Looks are no input of a forecast; one jar's news may be.
        if (one is { } touched)
            await renewal.RunAsync(touched, cancellationToken);
        else
            renewal.WakeLoops();
        return outcome;
    }

    private async Task<AnswerOutcome> FileAsync(
        EntryMark mark, Func<Answering, IReadOnlyList<Jar>, AnswerOutcome> answer, int? one, CancellationToken cancellationToken)
    {
        DateTimeZone zone = (await households.ReadAsync(cancellationToken)).Zone;
        await _turn.WaitAsync(cancellationToken);
        try
        {
            IReadOnlyList<Jar> known = one is { } number
                ? [(await jars.FindAsync(number, cancellationToken))!]
                : await jars.KeptAsync(cancellationToken);
            AnswerOutcome outcome = answer(new Answering(mark.Id, mark.By, Now, zone, mark.Role, mark.Again), known);
            if (outcome is { Replaces: { } wrong, Observations: [var right] })
                await jars.CorrectAsync(wrong, Now, mark.By, right, cancellationToken);
            else if (outcome.Observations.Count > 0)
                await jars.ObserveAsync(outcome.Observations, cancellationToken);
            return outcome;
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();
}
