using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;

namespace FermentWatch.Kitchen.Planning;

/// <summary>
/// Makes a plan: the rule of <see cref="StartSearch"/> for some margins and some days of lead, each held against the same winters, and of those that
/// last the one with the fewest vessels and days of work. A plan holds a few dozen starts at most, so that a plain search finds it in a moment.
/// </summary>
public sealed class Planner
{
    /// <summary>A day of work counts as much as so many vessels; this project's own choice.</summary>
    private const int VesselsADayIsWorth = 2;

    /// <summary>A little more than is promised, so that another thousand winters hold it too.</summary>
    private const double AimedAt = Plan.Promised + 0.02;

    private const double LeastMargin = 0.1, MarginStep = 0.05, MostMargin = 0.6;
    private const int MostEarlier = 3;

    /// <summary>How many times the room is thought of where it does not do.</summary>
    private static readonly double[] MoreRoom = [1, 1.5, 2.5, 4, 8];

    private readonly Winters _winters = new();
    private readonly IReadOnlyList<Lot> _stock;
    private readonly Func<RoomAhead, ReadyDays?> _readyIn;

    /// <param name="stock">What stands there already.</param>
    /// <param name="readyIn">When a jar is sour in such a room; null where fewer than nine in ten get there.</param>
    public Planner(IReadOnlyList<Lot> stock, Func<RoomAhead, ReadyDays?> readyIn)
    {
        _stock = stock;
        _readyIn = readyIn;
    }

    /// <summary>The plan, and where it cannot be met the nearest that can.</summary>
    public Plan Make(PlanQuestion question)
    {
        StartDays days = StartDays.Of(question, _readyIn);
        Found found = Search(question, days);
        bool isMet = found.LastShare >= Plan.Promised;
        PlannedStart[] starts = [.. found.Lots.Where(lot => lot.IsPlanned).GroupBy(lot => lot.StartDay)
            .Select(lots => Start(question, days, [.. lots]))];
        return new Plan(question, starts, _winters.Of(question, found.Lots, Looks(question)), Fullest(question, found.Lots).Vessels,
            _stock.Sum(lot => StorePath.Expected(question, lot)) / question.ServingLitres, days.Refused, isMet ? PlanLimit.None : found.Limits,
            isMet ? [] : [.. NearestTo(question, days)], Feast(question), Oldest(question, found.Lots));
    }

    /// <summary>Days on which people are away soon are used only where it does not last without them.</summary>
    private Found Search(PlanQuestion question, StartDays days)
    {
        Found without = Search(question, [.. days.Possible.Where(day => !day.IsSoonAlone)]);
        return without.LastShare >= AimedAt || days.Possible.All(day => !day.IsSoonAlone) ? without
            : Better(without, Search(question, days.Possible));
    }

    private Found Search(PlanQuestion question, IReadOnlyList<StartDay> days)
    {
        var search = new StartSearch(question, days, _stock);
        Found? best = null;
        PlanLimit inTheWay = PlanLimit.None;
        for (int earlier = 0; earlier <= MostEarlier; earlier++)
            for (double margin = LeastMargin; margin <= MostMargin; margin += MarginStep)
            {
                (IReadOnlyList<Lot> lots, PlanLimit? limits) = search.Run(margin, earlier);
                var found = new Found(lots, PlanLimit.None, _winters.Of(question, lots, []));
                inTheWay |= limits ?? PlanLimit.None;
                best = best is null ? found : Better(best, found);
                // A greater margin only asks for more of what could not be had.
                if (found.LastShare >= AimedAt || limits is not null)
                    break;
            }
        return best! with { Limits = inTheWay };
    }

    /// <summary>What lasts comes before what does not, then what gives more, then what is less work.</summary>
    private static Found Better(Found one, Found other)
    {
        double first = Math.Min(one.LastShare, AimedAt) + one.Spread.ServedShare,
            second = Math.Min(other.LastShare, AimedAt) + other.Spread.ServedShare;
        bool bothLast = one.LastShare >= AimedAt && other.LastShare >= AimedAt;
        return bothLast || first == second ? (other.Work < one.Work ? other : one) : first > second ? one : other;
    }

    /// <summary>Later, less, or with more vessels or room: the first of each kind that can be met.</summary>
    private IEnumerable<NearestPlan> NearestTo(PlanQuestion question, StartDays days)
    {
        if (days.Possible.Count == 0)
            yield break;
        int first = question.AtHome(days.Possible.Min(day => day.Day + (int)Math.Ceiling(day.Ready.Late)));
        PlanQuestion later = first <= question.Day(question.From) ? question : question with { From = question.Date(first) };
        if (later.From > later.Until)
            yield break;
        if (later != question && Try(later, days) is { } inTime)
        {
            yield return inTime;
            yield break;
        }
        var vessels = later with { Vessels = [.. later.Vessels.Select(each => each with { Count = null })] };
        int room = later.StoreHolds.Count!.Value;
        if (MoreRoom.Select(more => vessels with { StoreHolds = vessels.StoreHolds with { Count = (int)Math.Ceiling(room * more) } })
            .Select(each => Try(each, days)).OfType<NearestPlan>().FirstOrDefault() is { } larger)
            yield return larger with { RoomJars = Math.Max(larger.RoomJars, room) };
        if (Most(later, days) is { } less)
            yield return less;
    }

    /// <summary>The largest share of the servings, in twentieths, that can be met; null where not even one can.</summary>
    private NearestPlan? Most(PlanQuestion question, StartDays days)
    {
        NearestPlan? most = null;
        for (int low = 1, high = 19; low <= high;)
        {
            int middle = (low + high) / 2;
            NearestPlan? tried = Try(question with { ServingsAWeek = question.ServingsAWeek * middle / 20 }, days);
            (most, low, high) = tried is null ? (most, low, middle - 1) : (tried, middle + 1, high);
        }
        return most;
    }

    private NearestPlan? Try(PlanQuestion question, StartDays days)
    {
        Found found = Search(question, days);
        if (found.LastShare < Plan.Promised)
            return null;
        (int vessels, int jars) = Fullest(question, found.Lots);
        return new NearestPlan(question.From, question.ServingsAWeek, vessels, jars);
    }

    /// <summary>Vessels in use and jars in the store on the fullest day of each, where something comes.</summary>
    private static (int Vessels, int RoomJars) Fullest(PlanQuestion question, IReadOnlyList<Lot> lots)
    {
        var path = new StorePath(question, lots);
        int[] comes = [0, .. lots.SelectMany(lot => new[] { Math.Max(0, lot.StartDay), lot.MiddleDay })];
        return (comes.Max(path.InUse), (int)Math.Ceiling((comes.Max(path.RoomTaken) / question.StoreHolds.Litres) - 1e-9));
    }

    private static PlannedStart Start(PlanQuestion question, StartDays days, IReadOnlyList<Lot> lots)
    {
        Lot any = lots[0];
        StartDay day = days.Possible.First(each => each.Day == any.StartDay);
        Vessels[] filled = [.. lots.Select(lot => new Vessels(lot.VesselLitres, lot.Count))];
        return new PlannedStart(question.Date(any.StartDay), day.Celsius, filled,
            Shopping.For(filled, question.Vegetable.UsualCut, question.SaltPercent),
            question.Date(any.EarlyDay), question.Date(any.MiddleDay), question.Date(any.LateDay), question.Date(question.AtHome(any.LateDay)),
            day.IsSoonAlone);
    }

    private PackBy? Feast(PlanQuestion question) => question.Feast is { } feast
        && _readyIn(new RoomAhead(question.Room.MeanCelsius, question.Room.SpreadCelsius)) is { } ready
        ? PackBy.For(feast, new PassageDays(ready.Early, ready.Middle, ready.Late)) : null;

    /// <summary>Every week from the first day on, and the last day.</summary>
    private static IReadOnlyList<int> Looks(PlanQuestion question)
    {
        int from = question.Day(question.From), until = question.Day(question.Until);
        return [.. Enumerable.Range(0, ((until - from) / 7) + 1).Select(week => from + (7 * week)).Append(until).Distinct()];
    }

    private static int Oldest(PlanQuestion question, IReadOnlyList<Lot> lots)
    {
        double litres = 0;
        int oldest = 0;
        foreach (Lot lot in lots.OrderBy(lot => lot.MiddleDay))
        {
            litres += StorePath.Expected(question, lot);
            int eatenUp = Math.Max(question.Day(question.From) + (int)(litres / question.LitresADay), lot.MiddleDay);
            oldest = Math.Max(oldest, eatenUp - lot.MiddleDay);
        }
        return oldest;
    }

    private sealed record Found(IReadOnlyList<Lot> Lots, PlanLimit Limits, PlanSpread Spread)
    {
        public double LastShare => Spread.LastShare;

        public int Work => Lots.Where(lot => lot.IsPlanned).Sum(lot => lot.Count)
            + (VesselsADayIsWorth * Lots.Where(lot => lot.IsPlanned).Select(lot => lot.StartDay).Distinct().Count());
    }
}
