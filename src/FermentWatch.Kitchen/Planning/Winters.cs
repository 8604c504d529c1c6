using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Planning;

/// <summary>
/// A plan held against many winters in which everything it is unsure of is drawn: how much is eaten (a winter's own share, normal about what was
/// planned with 10 %; this project's own figure), what comes to the table (a winter's own share, normal with <see cref="Servings.Deviation"/>, and
/// 5 % from lot to lot; own), which jars are lost (each by itself, by the share of the question), and the day a lot is sour (the model's spread,
/// half of its variance common to the winter; own). The numbers are keyed: the same plan has the same winters.
/// </summary>
internal sealed class Winters
{
    /// <summary>Winters that are lived through.</summary>
    public const int Count = 1000;

    /// <summary>How far the eating of a winter is from what was planned, as a share.</summary>
    public const double EatingDeviation = 0.10;

    private const double LotDeviation = 0.05, LeastShare = 0.3;
    private const ulong Key = 20261101;
    private const int DaysAfter = 90;
    private static readonly double Half = Math.Sqrt(0.5);

    private enum Drawn : uint { Eating = 1, Yield, Pace, LotPace, LotYield, LotLoss }

    private readonly (double Eating, double Yield, double Pace)[] _winters = new (double, double, double)[Count];
    private readonly (double Pace, double Yield, double Loss)[,] _lots = new (double, double, double)[Count, StartSearch.MostStarts * 2];

    /// <summary>Draws the winters.</summary>
    public Winters()
    {
        for (uint winter = 0; winter < Count; winter++)
        {
            _winters[winter] = (Share(EatingDeviation * Normal(Drawn.Eating, winter)), Share(Servings.Deviation * Normal(Drawn.Yield, winter)),
                Normal(Drawn.Pace, winter));
            for (uint lot = 0; lot < _lots.GetLength(1); lot++)
                _lots[winter, lot] = (Normal(Drawn.LotPace, winter, lot), Share(LotDeviation * Normal(Drawn.LotYield, winter, lot)),
                    Philox.Uniform(Key, (uint)Drawn.LotLoss, winter, lot));
        }
    }

    /// <summary>Lives through them.</summary>
    /// <param name="question">The question.</param>
    /// <param name="lots">All lots.</param>
    /// <param name="looks">Days from today on which the store is looked at, by day.</param>
    public PlanSpread Of(PlanQuestion question, IReadOnlyList<Lot> lots, IReadOnlyList<int> looks)
    {
        int from = question.Day(question.From), until = question.Day(question.Until), last = until + (looks.Count > 0 ? DaysAfter : 0);
        var levels = looks.Select(_ => new double[Count]).ToArray();
        var runsOut = new int[Count];
        var arriving = new double[last + 1];
        double missed = 0;
        for (int winter = 0; winter < Count; winter++)
        {
            Arrivals(question, lots, winter, arriving);
            double there = 0, eaten = question.LitresADay * _winters[winter].Eating;
            int look = 0;
            runsOut[winter] = int.MaxValue;
            for (int day = 0; day <= last; day++)
            {
                there += arriving[day];
                if (look < looks.Count && looks[look] == day)
                    levels[look++][winter] = there / question.ServingLitres;
                if (day < from)
                    continue;
                if (there < eaten)
                    runsOut[winter] = Math.Min(runsOut[winter], day);
                missed += there < eaten && day <= until ? (eaten - there) / eaten : 0;
                there = Math.Max(0, there - eaten);
            }
        }
        Array.Sort(runsOut);
        return new PlanSpread(runsOut.Count(day => day > until) / (double)Count, 1 - (missed / Count / (until - from + 1)),
            [.. looks.Select((day, index) => Level(question, day, levels[index]))], OutOf(question, runsOut, 0.1), OutOf(question, runsOut, 0.5));
    }

    private void Arrivals(PlanQuestion question, IReadOnlyList<Lot> lots, int winter, double[] arriving)
    {
        Array.Clear(arriving);
        (_, double yield, double pace) = _winters[winter];
        for (int i = 0; i < lots.Count; i++)
        {
            Lot lot = lots[i];
            var own = _lots[winter, i % _lots.GetLength(1)];
            int day = question.AtHome(lot.DayAt(Half * (pace + own.Pace)));
            if (day < arriving.Length)
                arriving[day] += (lot.Count - Lost(lot.Count, question.LossShare, own.Loss)) * lot.LitresEach * yield * own.Yield;
        }
    }

    /// <summary>How many of some jars are lost where each is lost by itself: the quantile of the binomial distribution.</summary>
    internal static int Lost(int jars, double share, double uniform)
    {
        double chance = Math.Pow(1 - share, jars), sum = chance;
        int lost = 0;
        for (; uniform > sum && lost < jars; lost++)
        {
            chance *= (jars - lost) / (lost + 1.0) * share / (1 - share);
            sum += chance;
        }
        return lost;
    }

    private static double Normal(Drawn what, uint winter, uint lot = 0) => Philox.Normal(Key, (uint)what, winter, lot);

    private static double Share(double deviation) => Math.Max(LeastShare, 1 + deviation);

    private static StoreLevel Level(PlanQuestion question, int day, double[] servings)
    {
        Array.Sort(servings);
        return new StoreLevel(question.Date(day), servings[Count / 10], servings[Count / 2], servings[Count * 9 / 10]);
    }

    private static NodaTime.LocalDate? OutOf(PlanQuestion question, int[] sorted, double share) =>
        sorted[(int)(share * Count)] is var day && day < int.MaxValue ? question.Date(day) : null;
}
