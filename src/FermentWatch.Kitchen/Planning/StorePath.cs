namespace FermentWatch.Kitchen.Planning;

/// <summary>What is there and what is eaten on the way that is expected: what is sour first is eaten first.</summary>
/// <param name="question">The question.</param>
/// <param name="lots">Everything there is and will be.</param>
internal sealed class StorePath(PlanQuestion question, IReadOnlyList<Lot> lots)
{
    private readonly int _from = question.Day(question.From), _until = question.Day(question.Until);

    /// <summary>What is expected of a lot at the table, litres: without what is lost.</summary>
    public static double Expected(PlanQuestion question, Lot lot) => lot.Litres * (1 - question.LossShare);

    /// <summary>
    /// The first day on which it does not last where more is eaten than planned and every jar is as late as one in ten is; null where it lasts.
    /// </summary>
    /// <param name="margin">How much more is eaten, as a share.</param>
    public int? RunsOut(double margin)
    {
        double eaten = 0, daily = question.LitresADay * (1 + margin);
        var arriving = lots.Select(lot => (Day: lot.LateDay, Litres: Expected(question, lot))).OrderBy(each => each.Day).ToList();
        double there = 0;
        int next = 0;
        for (int day = _from; day <= _until; day++)
        {
            for (; next < arriving.Count && arriving[next].Day <= day; next++)
                there += arriving[next].Litres;
            eaten += daily;
            if (eaten > there + 1e-9)
                return day;
        }
        return null;
    }

    /// <summary>Litres that are eaten in all, less what all lots give; below 0 where more is there.</summary>
    public double Missing(double margin) =>
        ((_until - _from + 1) * question.LitresADay * (1 + margin)) - lots.Sum(lot => Expected(question, lot));

    /// <summary>Vessels of a size in use on a day: what works, and jars in the store that are not eaten up.</summary>
    public int InUse(double vesselLitres, int day) => Standing(day).Where(each => each.Lot.VesselLitres == vesselLitres).Sum(each =>
        !each.IsReady ? each.Lot.Count : VesselFill.IsCrock(vesselLitres) ? 0 : each.JarsLeft);

    /// <summary>Room taken in the store on a day, litres of jars.</summary>
    public double RoomTaken(int day) => Standing(day).Where(each => each.IsReady).Sum(each =>
        VesselFill.IsCrock(each.Lot.VesselLitres) ? each.LitresLeft : each.JarsLeft * each.Lot.VesselLitres);

    /// <summary>Vessels of whatever size in use on a day.</summary>
    public int InUse(int day) => lots.Select(lot => lot.VesselLitres).Distinct().Sum(litres => InUse(litres, day));

    private IEnumerable<(Lot Lot, bool IsReady, double LitresLeft, int JarsLeft)> Standing(int day)
    {
        double eaten = EatenBy(day);
        foreach (Lot lot in lots.Where(lot => lot.StartDay <= day).OrderBy(lot => lot.MiddleDay))
        {
            bool isReady = lot.MiddleDay <= day;
            double litres = Expected(question, lot), taken = isReady ? Math.Min(litres, eaten) : 0;
            eaten -= taken;
            yield return (lot, isReady, litres - taken, (int)Math.Ceiling((lot.Count * (litres - taken) / Math.Max(litres, 1e-9)) - 1e-9));
        }
    }

    /// <summary>Litres eaten before a day: every day as much as is wanted, or as there is.</summary>
    private double EatenBy(int day)
    {
        double eaten = 0, there = 0;
        int next = 0;
        List<Lot> arriving = [.. lots.OrderBy(lot => lot.MiddleDay)];
        for (int each = _from; each < day; each++)
        {
            for (; next < arriving.Count && arriving[next].MiddleDay <= each; next++)
                there += Expected(question, arriving[next]);
            eaten = Math.Min(eaten + question.LitresADay, there);
        }
        return eaten;
    }
}
