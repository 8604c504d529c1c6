using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>
/// When people are asked to taste. One jar stands for a lot of like jars; an ask nobody answers comes again the next day, then
/// after 3 days, then weekly; at most 3 in a week, the lot that waited longest first; a lot past its tasting days is
/// asked about once, as a decision. All of it follows from the records and forecasts as they are; what is answered on a day takes its own
/// ask away and changes no other of that day. This project's own rules.
/// </summary>
public sealed class TastingPlan
{
    private const int AsksInAWeek = 3;
    private const int DaysOfAWeek = 7;

    private readonly Household _household;
    private readonly List<Jar> _kept;
    private readonly IReadOnlyDictionary<Guid, JarForecast> _forecasts;
    private readonly List<Lot> _lots;
    private readonly Dictionary<LocalDate, HashSet<LotKey>> _askedOn = [];

    /// <param name="jars">Every kept jar, whole.</param>
    /// <param name="forecasts">The latest forecasts by jar.</param>
    /// <param name="household">For its zone, and whether it tastes this week.</param>
    public TastingPlan(IEnumerable<Jar> jars, IReadOnlyDictionary<Guid, JarForecast> forecasts, Household household)
    {
        _household = household;
        _forecasts = forecasts;
        _kept = [.. jars];
        _lots = LotsOf(_kept);
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
        return _kept.Exists(jar => jar.Observations.Exists(each => each.At >= morning)) ? LotsOf([.. _kept.Select(jar => jar.Before(morning))]) : _lots;
    }

    /// <summary>What tasting comes to for a jar on a date; null where no tasting is a question for it: not fermenting, or in trouble.</summary>
    public TasteAsk? Of(Jar jar, LocalDate date)
    {
        if (_lots.Find(each => each.Tasted.Contains(jar.Id)) is not { } lot)
            return null;
        TasteAskKind kind = jar.Id != lot.By.Id ? TasteAskKind.Nothing
            : lot.PastFrom == date && lot.From is not null ? TasteAskKind.Decide
            : lot.From <= date && AskedOn(date).Contains(KeyOf(lot.By)) ? TasteAskKind.Taste : TasteAskKind.Nothing;
        return new TasteAsk(lot.By.Number, lot.Numbers, lot.From, lot.PastFrom, lot.SaidRight, kind);
    }

    private HashSet<LotKey> AskedOn(LocalDate date) => _askedOn.TryGetValue(date, out HashSet<LotKey>? known) ? known : _askedOn[date] = WorkOut(date);

    /// <summary>The lots asked about on a date, by going through the days up to it.</summary>
    private HashSet<LotKey> WorkOut(LocalDate date)
    {
        List<Lot> lots = LotsAt(date);
        var open = lots.Where(lot => lot.From <= date).ToList();
        var asked = open.ToDictionary(lot => lot, lot => new List<LocalDate>());
        var today = new HashSet<LotKey>();
        for (LocalDate day = open.Select(lot => lot.From!.Value).DefaultIfEmpty(date.PlusDays(1)).Min(); day <= date; day = day.PlusDays(1))
        {
            today.Clear();
            if (IsPaused(day))
                continue;
            int lately = asked.Values.Sum(days => days.Count(each => Period.DaysBetween(each, day) < DaysOfAWeek));
            foreach (Lot lot in open.Where(lot => !lot.IsPast(day) && NextOf(lot, asked[lot]) <= day)
                .OrderBy(lot => NextOf(lot, asked[lot])).ThenBy(lot => lot.PastFrom ?? LocalDate.MaxIsoValue).Take(AsksInAWeek - lately))
            {
                asked[lot].Add(day);
                today.Add(KeyOf(lot.By));
            }
        }
        return today;
    }

    /// <summary>When a lot is asked about next, after what was asked in vain since it was tasted last.</summary>
    private static LocalDate NextOf(Lot lot, List<LocalDate> asked) => asked.Count switch
    {
        0 => lot.From!.Value,
        1 => asked[^1].PlusDays(1),
        2 => asked[^1].PlusDays(3),
        _ => asked[^1].PlusDays(DaysOfAWeek),
    };

    private bool IsPaused(LocalDate day) => _household.TastingAgainFrom is { } again && day < again && day >= again.PlusDays(-DaysOfAWeek);

    /// <param name="like">Those that ferment in one place.</param>
    /// <param name="alike">All that are alike, wherever they stand by now.</param>
    private Lot LotOf(List<Jar> like, IEnumerable<Jar> alike)
    {
        DateTimeZone zone = _household.Zone;
        // Leaving one is leaving the lot: nobody is asked the same for its neighbour.
        List<Jar> tastable = like.Exists(TastingDue.IsLeft) ? [] : [.. like.Where(jar => TastingDue.IsOpen(jar, zone))];
        Jar by = tastable.Count > 0 ? tastable[0] : like[0];
        var tastes = alike.SelectMany(jar => jar.Standing.OfType<Taste>().Where(taste => StoodWith(jar, by, taste.At))).OrderBy(taste => taste.At).ToList();
        bool isAsked = _forecasts.TryGetValue(by.Id, out JarForecast? forecast) || NoForecast.Of(by) is not null;
        LocalDate? from = isAsked && tastable.Count > 0 ? TastingDue.From(by, forecast, tastes, zone) : null;
        return new Lot(by, [.. tastable.Select(jar => jar.Number)], tastable.Select(jar => jar.Id).ToHashSet(), from,
            from is null ? null : TastingDue.PastFrom(by, forecast, tastes, zone), tastes.LastOrDefault()?.Verdict is TasteVerdict.Right or TasteVerdict.PastIt);
    }

    private LotKey KeyOf(Jar jar) => new(LikenessOf(jar), jar.PlacementAt(Instant.MaxValue).PlaceId);

    private Likeness LikenessOf(Jar jar) => new(
        string.Join('+', jar.Portions.Select(portion => portion.Produce).Order(StringComparer.Ordinal)), jar.Cut, jar.PackedAt.InZone(_household.Zone).Date,
        jar.Target, jar.Salting);

    private static bool StoodWith(Jar jar, Jar by, Instant at) => jar.PlacementAt(at).PlaceId == by.PlacementAt(at).PlaceId;

    /// <summary>What like jars have in common, however many entries they were put up by.</summary>
    private readonly record struct Likeness(string Vegetables, Cut Cut, LocalDate PackedOn, Sourness Target, Salting Salting);

    /// <summary>Like jars that stand together.</summary>
    private readonly record struct LotKey(Likeness Likeness, Guid Place);

    /// <summary>Like jars that stand together and are in no trouble.</summary>
    private sealed record Lot(Jar By, IReadOnlyList<int> Numbers, IReadOnlySet<Guid> Tasted, LocalDate? From, LocalDate? PastFrom, bool SaidRight)
    {
        public bool IsPast(LocalDate day) => PastFrom <= day;
    }
}
