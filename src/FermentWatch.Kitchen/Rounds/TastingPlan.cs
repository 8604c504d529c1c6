using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>
/// When people are asked to taste. One jar stands for a lot of like jars; an ask nobody answers comes again the next day, then
/// after 3 days, then weekly; at most 3 in any seven days, answered or not, the lot that waited longest first; a lot past its tasting days
/// is asked about once, as a decision. What was asked on a day stands in its round, so that a forecast that moves asks nobody anew; what is
/// to be asked follows from that, the records and the forecasts. This project's own rules.
/// </summary>
public sealed class TastingPlan
{
    private const int AsksInAWeek = 3;
    private const int DaysOfAWeek = 7;

    private readonly Household _household;
    private readonly List<Jar> _kept;
    private readonly IReadOnlyDictionary<Guid, JarForecast> _forecasts;
    private readonly List<Lot> _lots;
    private readonly SortedDictionary<LocalDate, Round> _told = [];
    private readonly Dictionary<LocalDate, IReadOnlyList<Guid>> _workedOut = [], _decisions = [];
    private readonly LocalDate _began;

    /// <param name="jars">Every kept jar, whole.</param>
    /// <param name="forecasts">The latest forecasts by jar.</param>
    /// <param name="household">For its zone, and whether it tastes this week.</param>
    /// <param name="rounds">Those of <see cref="TastingRounds"/>.</param>
    public TastingPlan(IEnumerable<Jar> jars, IReadOnlyDictionary<Guid, JarForecast> forecasts, Household household, IReadOnlyList<Round> rounds)
    {
        _household = household;
        _forecasts = forecasts;
        _kept = [.. jars];
        _lots = LotsOf(_kept);
        // The day on which a household begins was no round, yet its page asks as on any other, and nobody was asked before.
        ILookup<bool, Round> begun = rounds.ToLookup(round => round.Missed && round.OpenedAt.InZone(household.Zone).Date == round.Date);
        foreach (Round round in begun[false])
            _told[round.Date] = round;
        _began = begun[true].Select(round => round.Date).DefaultIfEmpty(LocalDate.MinIsoValue).Max();
    }

    private List<Lot> LotsOf(List<Jar> kept)
    {
        ILookup<Likeness, Jar> alike = kept.ToLookup(LikenessOf);
        return [.. kept.Where(jar => jar.Stage == JarStage.Fermenting).GroupBy(KeyOf)
            .Select(lot => LotOf([.. lot.OrderBy(jar => jar.Number)], alike[lot.Key.Likeness])).OrderBy(lot => lot.By.Number)];
    }

    /// <summary>The lots as they stood when a day began.</summary>
    private List<Lot> LotsAt(LocalDate date)
    {
        Instant morning = date.AtStartOfDayInZone(_household.Zone).ToInstant();
        return _kept.Exists(jar => jar.Observations.Exists(each => each.At >= morning)) ? LotsOf([.. _kept.Select(jar => jar.Before(morning))])
            : _lots;
    }

    /// <summary>What tasting comes to for a jar on a date; null where no tasting is a question for it: not fermenting, or in trouble.</summary>
    public TasteAsk? Of(Jar jar, LocalDate date)
    {
        if (_lots.Find(each => each.Tasted.Contains(jar.Id)) is not { } lot)
            return null;
        bool stands = jar.Id == lot.By.Id, asked = stands && AskedOn(date).Any(lot.Tasted.Contains) && !IsPaused(date);
        // What was asked in the morning is asked until it is answered, though the forecast has moved on; never before it may be tasted.
        LocalDate? from = asked && !(lot.TastedOn >= date) && NotBefore(lot.By) <= date ? LocalDate.Min(lot.From ?? date, date) : lot.From;
        TasteAskKind kind = !stands || lot.From is null ? TasteAskKind.Nothing
            : DecidedOn(date).Any(lot.Tasted.Contains) && !(lot.TastedOn >= date) ? TasteAskKind.Decide
            : asked && from <= date && !lot.IsPast(date) ? TasteAskKind.Taste : TasteAskKind.Nothing;
        return new TasteAsk(lot.By.Number, lot.Numbers, lot.From is null ? null : from, lot.PastFrom, lot.SaidRight, kind);
    }

    /// <summary>The jars that are asked to be tasted on a date, each for its lot, as things stood when the day began.</summary>
    public IReadOnlyList<Guid> AskedOn(LocalDate date) => _told.TryGetValue(date, out Round? told) ? told.TasteAsked
        : _workedOut.TryGetValue(date, out IReadOnlyList<Guid>? known) ? known : _workedOut[date] = WorkOut(date);

    /// <summary>
    /// The jars that are asked about as a decision on a date, each for its lot, as things stood when the day began: on the first day that
    /// finds it past its tasting days, once since it was tasted last.
    /// </summary>
    public IReadOnlyList<Guid> DecidedOn(LocalDate date) => _told.TryGetValue(date, out Round? told) ? told.DecideAsked
        : _decisions.TryGetValue(date, out IReadOnlyList<Guid>? known) ? known : _decisions[date] = WorkOutDecisions(date);

    private List<Guid> WorkOutDecisions(LocalDate date)
    {
        LocalDate next = _told.Keys.Where(day => day < date).Select(day => day.PlusDays(1)).DefaultIfEmpty(LocalDate.MinIsoValue).Max();
        return [.. LotsAt(date).Where(lot => lot.PastFrom is { } past && LocalDate.Max(past, next) == date
            && !_told.Any(day => day.Key < date && !(day.Key <= lot.TastedOn) && day.Value.DecideAsked.Any(lot.Tasted.Contains)))
            .Select(lot => lot.By.Id)];
    }

    /// <summary>The jars asked for on a date whose round is not opened yet, by going through the days that lie between.</summary>
    private List<Guid> WorkOut(LocalDate date)
    {
        List<Lot> open = [.. LotsAt(date).Where(lot => lot.From <= date)];
        var asked = open.ToDictionary(lot => lot, lot =>
            _told.Where(day => day.Key < date && !(day.Key <= lot.TastedOn) && day.Value.TasteAsked.Any(lot.Tasted.Contains))
            .Select(day => day.Key).ToList());
        var all = _told.Where(day => day.Key < date).ToDictionary(day => day.Key, day => day.Value.TasteAsked.Count);
        LocalDate begin = _told.Keys.Where(day => day < date).Select(day => day.PlusDays(1))
            .Append(open.Select(lot => lot.From!.Value).DefaultIfEmpty(date).Min()).Append(_began).Max();
        List<Guid> today = [];
        for (LocalDate day = begin; day <= date; day = day.PlusDays(1))
        {
            today.Clear();
            if (IsPaused(day))
                continue;
            int lately = all.Where(each => each.Key > day.PlusDays(-DaysOfAWeek)).Sum(each => each.Value);
            foreach (Lot lot in open.Where(lot => !lot.IsPast(day) && NextOf(lot, asked[lot]) <= day)
                .OrderBy(lot => NextOf(lot, asked[lot])).ThenBy(lot => lot.PastFrom ?? LocalDate.MaxIsoValue).Take(AsksInAWeek - lately))
            {
                asked[lot].Add(day);
                today.Add(lot.By.Id);
            }
            all[day] = today.Count;
        }
        return today;
    }

    /// <summary>When a lot is asked about next, after what was asked in vain since it was tasted last.</summary>
    private static LocalDate NextOf(Lot lot, List<LocalDate> asked) => LocalDate.Max(lot.From!.Value, asked.Count switch
    {
        0 => lot.From!.Value,
        1 => asked[^1].PlusDays(1),
        2 => asked[^1].PlusDays(3),
        _ => asked[^1].PlusDays(DaysOfAWeek),
    });

    private bool IsPaused(LocalDate day) => _household.TastingAgainFrom is { } again && day < again && day >= again.PlusDays(-DaysOfAWeek);

    /// <param name="like">Those that ferment in one place.</param>
    /// <param name="alike">All that are alike, wherever they stand by now.</param>
    private Lot LotOf(List<Jar> like, IEnumerable<Jar> alike)
    {
        DateTimeZone zone = _household.Zone;
        // Leaving one is leaving the lot: nobody is asked the same for its neighbour.
        List<Jar> tastable = like.Exists(TastingDue.IsLeft) ? [] : [.. like.Where(jar => TastingDue.IsOpen(jar, zone))];
        Jar by = tastable.Count > 0 ? tastable[0] : like[0];
        var tastes = alike.SelectMany(jar => jar.Standing.OfType<Taste>().Where(taste => StoodWith(jar, by, taste.At))).OrderBy(taste => taste.At)
            .ToList();
        bool isAsked = _forecasts.TryGetValue(by.Id, out JarForecast? forecast) || NoForecast.Of(by) is not null;
        LocalDate? from = isAsked && tastable.Count > 0 ? TastingDue.From(by, forecast, tastes, zone) : null;
        return new Lot(by, [.. tastable.Select(jar => jar.Number)], tastable.Select(jar => jar.Id).ToHashSet(), from,
            from is null ? null : TastingDue.PastFrom(by, forecast, tastes, zone), tastes.LastOrDefault()?.At.InZone(zone).Date,
            tastes.LastOrDefault()?.Verdict is TasteVerdict.Right or TasteVerdict.PastIt);
    }

    private LocalDate NotBefore(Jar jar) =>
        Tasting.NotBefore(jar, _forecasts.GetValueOrDefault(jar.Id), _household.Zone, AcidLine.Report(jar, _household.Zone).State);

    private LotKey KeyOf(Jar jar) => new(LikenessOf(jar), jar.PlacementAt(Instant.MaxValue).PlaceId);

    private Likeness LikenessOf(Jar jar) => new(
        string.Join('+', jar.Portions.Select(portion => portion.Produce).Order(StringComparer.Ordinal)), jar.Cut,
        jar.PackedAt.InZone(_household.Zone).Date,
        jar.Target, jar.Salting);

    private static bool StoodWith(Jar jar, Jar by, Instant at) => jar.PlacementAt(at).PlaceId == by.PlacementAt(at).PlaceId;

    /// <summary>What like jars have in common, however many entries they were put up by.</summary>
    private readonly record struct Likeness(string Vegetables, Cut Cut, LocalDate PackedOn, Sourness Target, Salting Salting);

    /// <summary>Like jars that stand together.</summary>
    private readonly record struct LotKey(Likeness Likeness, Guid Place);

    /// <summary>Like jars that stand together and are in no trouble.</summary>
    private sealed record Lot(Jar By, IReadOnlyList<int> Numbers, IReadOnlySet<Guid> Tasted, LocalDate? From, LocalDate? PastFrom,
        LocalDate? TastedOn, bool SaidRight)
    {
        public bool IsPast(LocalDate day) => PastFrom <= day;
    }
}

/// <summary>The rounds a tasting plan looks back on.</summary>
public static class TastingRounds
{
    private const int DaysLookedBack = 100;

    /// <summary>What was asked in the last hundred days, longer than any ferment here waits to be tasted.</summary>
    public static Task<IReadOnlyList<Round>> ForTastingAsync(this IRoundBook rounds, LocalDate today, CancellationToken cancellationToken) =>
        rounds.SinceAsync(today.PlusDays(-DaysLookedBack), cancellationToken);
}
