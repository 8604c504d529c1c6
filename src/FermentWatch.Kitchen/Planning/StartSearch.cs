using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Planning;

/// <summary>What kept a start from being as large as it was needed.</summary>
[Flags]
public enum PlanLimit
{
    None = 0,

    /// <summary>No vessel was free.</summary>
    Vessels = 1,

    /// <summary>The store was full.</summary>
    Room = 2,

    /// <summary>No day was left, or only so many vessels may be filled on one.</summary>
    Days = 4,
}

/// <summary>
/// Starts by one rule: as late as it can be, so that no day of time is given away, and as much as is needed and fits then. How much more than
/// is eaten it keeps ready, and how early it begins, are tried from outside.
/// </summary>
/// <param name="question">The question.</param>
/// <param name="days">Days on which something can be started.</param>
/// <param name="stock">What stands there already.</param>
internal sealed class StartSearch(PlanQuestion question, IReadOnlyList<StartDay> days, IReadOnlyList<Lot> stock)
{
    /// <summary>Starts that a plan holds at most.</summary>
    public const int MostStarts = 60;

    /// <summary>All lots, those of the stock among them; null limits where nothing runs out by the rule, else what stood in the way.</summary>
    /// <param name="margin">How much more is kept ready than is eaten, as a share.</param>
    /// <param name="earlier">How many of the days before the last possible one it begins.</param>
    public (IReadOnlyList<Lot> Lots, PlanLimit? Limits) Run(double margin, int earlier)
    {
        var lots = stock.ToList();
        PlanLimit limits = PlanLimit.None;
        int starts = 0;
        for (int i = 0; i < days.Count && starts < MostStarts; i++)
        {
            var path = new StorePath(question, lots);
            if (path.RunsOut(margin) is not { } runsOut)
                return (lots, null);
            if (path.Missing(margin) <= 0)
                break;
            if (i + 1 + earlier < days.Count && Late(days[i + 1 + earlier]) <= runsOut)
                continue;
            (List<Lot> start, PlanLimit tooLittle) = Fill(days[i], path, path.Missing(margin));
            starts += start.Count > 0 ? 1 : 0;
            lots.AddRange(start);
            // A start that is smaller than all that is missing is in nobody's way as long as the next one comes in time.
            if (new StorePath(question, lots).RunsOut(margin) is { } still && (i + 1 == days.Count || Late(days[i + 1]) > still))
                limits |= tooLittle;
        }
        return (lots, new StorePath(question, lots).RunsOut(margin) is null ? null : limits);
    }

    private static int Late(StartDay day) => day.Day + (int)Math.Ceiling(day.Ready.Late);

    /// <summary>The vessels of one day: the large ones first, as long as they are needed whole; and why they are fewer than needed.</summary>
    private (List<Lot> Filled, PlanLimit TooLittle) Fill(StartDay day, StorePath path, double missingLitres)
    {
        var filled = new List<Lot>();
        PlanLimit limits = PlanLimit.None;
        int ready = question.AtHome(day.Day + (int)Math.Ceiling(day.Ready.Middle)), left = question.VesselsADay;
        double room = (question.StoreHolds.Litres * question.StoreHolds.Count!.Value) - path.RoomTaken(ready);
        Vessels[] sizes = [.. question.Vessels.OrderByDescending(each => each.Litres)];
        for (int i = 0; i < sizes.Length && missingLitres > 1e-9; i++)
        {
            double each = Gives(sizes[i].Litres), expected = each * (1 - question.LossShare), takes = Takes(sizes[i].Litres, each);
            int needed = (int)(i == sizes.Length - 1 ? Math.Ceiling((missingLitres / expected) - 1e-9)
                : Math.Floor((missingLitres / expected) + 0.1));
            int free = sizes[i].Count is { } count ? Math.Max(0, count - path.InUse(sizes[i].Litres, day.Day)) : int.MaxValue;
            int fits = Math.Max(0, (int)Math.Floor((room / takes) + 1e-9)), number = Math.Min(Math.Min(needed, left), Math.Min(free, fits));
            limits |= (free < needed ? PlanLimit.Vessels : 0) | (fits < needed ? PlanLimit.Room : 0) | (left < needed ? PlanLimit.Days : 0);
            if (number <= 0)
                continue;
            filled.Add(new Lot(day.Day, number, sizes[i].Litres, each, day.Ready, IsPlanned: true));
            (left, room, missingLitres) = (left - number, room - (number * takes), missingLitres - (number * expected));
        }
        return (filled, limits);
    }

    private double Gives(double vesselLitres) => Servings.LitresFrom(
        vesselLitres * VesselFill.Of(vesselLitres, question.Vegetable.UsualCut).UsualKilogramsPerLitre, question.Vegetable.UsualCut);

    private static double Takes(double vesselLitres, double litresEach) => VesselFill.IsCrock(vesselLitres) ? litresEach : vesselLitres;
}
