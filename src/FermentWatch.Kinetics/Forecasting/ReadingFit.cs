using System.Globalization;
using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Simulation;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Takes in what was seen of a jar: members are moved to fit it, and pH readings they cannot explain are flagged.</summary>
internal sealed class ReadingFit
{
    /// <summary>A reading with less of the members' own readings beyond it than this, on one side, is flagged.</summary>
    private const double FlagShare = 0.005;

    /// <summary>Readings that lie this many standard deviations apart, seen from what the members make of them, contradict each other.</summary>
    private const double ContradictionDeviations = 3.5;

    /// <summary>Members are judged by coarser steps than they are shown by: still ten times finer than any reading.</summary>
    private const double JudgingSlack = 6;

    private readonly JarMembers _jar;
    private readonly Evidence _evidence;
    private readonly LaneTable _table;
    private readonly Trace _trace;
    private readonly List<FlaggedReading> _flagged = [];

    /// <param name="jar">The jar.</param>
    /// <param name="evidence">What was seen.</param>
    /// <param name="members">Members of the ensemble.</param>
    public ReadingFit(JarMembers jar, Evidence evidence, int members)
    {
        _jar = jar;
        _evidence = evidence;
        _table = new LaneTable(members);
        _trace = new Trace(members, evidence.Days, []);
    }

    public IReadOnlyList<FlaggedReading> Flagged => _flagged;

    /// <summary>Moves prior members, in place, to what the evidence leaves.</summary>
    public void Run(double[] deviates, MemberPrior prior, ulong seed)
    {
        if (_evidence.Days.Length == 0)
            return;
        _jar.Run(deviates, _table, _trace, JudgingSlack);
        double[] before = [.. _evidence.Readings.Select(ShareAbove)];
        double[] expectedBefore = [.. _evidence.Readings.Select(Expected)];
        new PosteriorSampler(prior, Judge, Philox.Key(seed, ModelIdentity.Key, 1)).Move(deviates);
        _jar.Run(deviates, _table, _trace, JudgingSlack);
        double[] after = [.. _evidence.Readings.Select(ShareAbove)];
        double[] expected = [.. _evidence.Readings.Select(Expected)];
        for (int i = 0; i < before.Length; i++)
        {
            if (IsFarOut(after[i]))
                Flag(i, "does not fit the other readings, the recipe and the temperature", expected[i]);
            else if (IsContradicted(after, i))
                Flag(i, "contradicts another reading; with the recipe and the temperature", expected[i]);
            else if (IsFarOut(before[i]) && !IsBorneOut(before, i))
                Flag(i, "does not fit the recipe and the temperature alone", expectedBefore[i]);
        }
    }

    private static bool IsFarOut(double shareAbove) => shareAbove < FlagShare || shareAbove > 1 - FlagShare;

    /// <summary>Another reading lies as unexpectedly on the same side.</summary>
    private static bool IsBorneOut(double[] before, int reading) =>
        before.Where((share, other) => other != reading && IsFarOut(share) && share < 0.5 == before[reading] < 0.5).Any();

    /// <summary>Another reading lies so far on the other side of what the members make of both.</summary>
    private static bool IsContradicted(double[] after, int reading)
    {
        double here = NormalDistribution.Quantile(Math.Clamp(after[reading], 1e-12, 1 - 1e-12));
        return after.Any(other => Math.Abs(NormalDistribution.Quantile(Math.Clamp(other, 1e-12, 1 - 1e-12)) - here) > ContradictionDeviations);
    }

    private void Judge(ReadOnlySpan<double> deviates, Span<double> logLikelihood)
    {
        _jar.Run(deviates, _table, _trace, JudgingSlack);
        logLikelihood.Clear();
        foreach (PhReading reading in _evidence.Readings)
        {
            ReadOnlySpan<double> ph = _trace.At(_trace.Ph, _evidence.TimeOf(reading.Day));
            for (int m = 0; m < ph.Length; m++)
                logLikelihood[m] += PhLikelihood.LogDensity(reading, ph[m]);
        }
        foreach (AcidityReading titration in _evidence.Titrations)
        {
            ReadOnlySpan<double> acidity = _trace.At(_trace.Acidity, _evidence.TimeOf(titration.Day));
            for (int m = 0; m < acidity.Length; m++)
                logLikelihood[m] += AcidityLikelihood.LogDensity(titration, acidity[m]);
        }
        foreach (TasteReading taste in _evidence.Tastes)
        {
            double[] course = _evidence.Scale.Watched == Watched.Sourness ? _trace.Sourness : _trace.Acidity;
            ReadOnlySpan<double> tasted = _trace.At(course, _evidence.TimeOf(taste.Day));
            for (int m = 0; m < tasted.Length; m++)
            {
                double liked = HouseholdPrior.TotalTaste * deviates[(m * Deviate.Count) + Deviate.Taste];
                logLikelihood[m] += TasteLikelihood.LogProbability(taste.Verdict, _evidence.Scale.LnOver(tasted[m]) - liked);
            }
        }
        foreach (GasReading gas in _evidence.Gas)
        {
            ReadOnlySpan<double> rate = _trace.At(_trace.GasPerDay, _evidence.TimeOf(gas.Day));
            for (int m = 0; m < rate.Length; m++)
                logLikelihood[m] += GasLikelihood.LogProbability(gas.Seen, rate[m]);
        }
    }

    /// <summary>Share of the readings the members would give that lie above the one that came.</summary>
    private double ShareAbove(PhReading reading)
    {
        double deviation = PhLikelihood.Deviation(reading.Method);
        double above = 0;
        foreach (double ph in _trace.At(_trace.Ph, _evidence.TimeOf(reading.Day)))
            above += NormalDistribution.Cumulative((ph - reading.Ph) / deviation);
        return above / _trace.Members;
    }

    private double Expected(PhReading reading) =>
        QuantileOf.Values(_trace.At(_trace.Ph, _evidence.TimeOf(reading.Day)), new double[_trace.Members]).P50;

    private void Flag(int index, string reason, double expected)
    {
        PhReading reading = _evidence.Readings[index];
        _flagged.Add(new(reading, string.Create(CultureInfo.InvariantCulture,
            $"pH {reading.Ph:0.00} on day {reading.Day:0.##} {reason}: they lead to {expected:0.00}"), reading.Ph > expected));
    }
}
