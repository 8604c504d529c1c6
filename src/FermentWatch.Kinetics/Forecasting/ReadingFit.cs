using System.Globalization;
using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Takes a jar's pH readings in: members are moved to fit them, and what they cannot explain is flagged.</summary>
internal sealed class ReadingFit
{
    /// <summary>A reading with less of the members' own readings beyond it than this, on one side, is flagged.</summary>
    private const double FlagShare = 0.005;

    private readonly JarMembers _jar;
    private readonly IReadOnlyList<PhReading> _readings;
    private readonly int[] _times;
    private readonly LaneTable _table;
    private readonly Trace _trace;
    private readonly List<FlaggedReading> _flagged = [];

    /// <param name="jar">The jar.</param>
    /// <param name="readings">Readings in order of day, pH and method.</param>
    /// <param name="members">Members of the ensemble.</param>
    public ReadingFit(JarMembers jar, IReadOnlyList<PhReading> readings, int members)
    {
        _jar = jar;
        _readings = readings;
        double[] days = [.. readings.Select(DayOf).Distinct()];
        _times = [.. readings.Select(reading => Array.IndexOf(days, DayOf(reading)))];
        _table = new LaneTable(members);
        _trace = new Trace(members, days, []);
    }

    public IReadOnlyList<FlaggedReading> Flagged => _flagged;

    /// <summary>Moves prior members, in place, to what the readings leave.</summary>
    public void Run(double[] deviates, MemberPrior prior, ulong seed)
    {
        if (_readings.Count == 0)
            return;
        _jar.Run(deviates, _table, _trace);
        bool[] unexpected = [.. _readings.Select((_, index) => IsFarOut(index))];
        new PosteriorSampler(prior, Judge, KeyOf(seed)).Move(deviates);
        _jar.Run(deviates, _table, _trace);
        for (int i = 0; i < _readings.Count; i++)
        {
            bool unexplained = IsFarOut(i);
            if (unexpected[i] || unexplained)
                Flag(i, unexplained);
        }
    }

    private static double DayOf(PhReading reading) =>
        Math.Round(reading.Day * TemperatureCourse.StepsPerDay) / TemperatureCourse.StepsPerDay;

    private void Judge(ReadOnlySpan<double> deviates, Span<double> logLikelihood)
    {
        _jar.Run(deviates, _table, _trace);
        for (int m = 0; m < logLikelihood.Length; m++)
        {
            double sum = 0;
            for (int i = 0; i < _readings.Count; i++)
                sum += PhLikelihood.LogDensity(_readings[i], _trace.Ph[(_times[i] * _trace.Members) + m]);
            logLikelihood[m] = sum;
        }
    }

    private bool IsFarOut(int index)
    {
        double above = ShareAbove(index);
        return above < FlagShare || above > 1 - FlagShare;
    }

    /// <summary>Share of the readings the members would give that lie above the one that came.</summary>
    private double ShareAbove(int index)
    {
        PhReading reading = _readings[index];
        double deviation = PhLikelihood.Deviation(reading.Method);
        double above = 0;
        foreach (double ph in _trace.At(_trace.Ph, _times[index]))
            above += NormalDistribution.Cumulative((ph - reading.Ph) / deviation);
        return above / _trace.Members;
    }

    private void Flag(int index, bool unexplained)
    {
        PhReading reading = _readings[index];
        double expected = QuantileOf.Values(_trace.At(_trace.Ph, _times[index]), new double[_trace.Members]).P50;
        string against = unexplained ? "the other readings, the recipe and the temperature" : "the recipe and the temperature alone";
        _flagged.Add(new(reading, string.Create(CultureInfo.InvariantCulture, $"pH {reading.Ph:0.00} on day {reading.Day:0.##} does not fit {against}: {expected:0.00} fits them best"), reading.Ph > expected));
    }

    private ulong KeyOf(ulong seed)
    {
        ulong key = Philox.Key(seed, ModelIdentity.Key, 1);
        foreach (PhReading reading in _readings)
            key = Philox.Key(key, BitConverter.DoubleToUInt64Bits(reading.Day), BitConverter.DoubleToUInt64Bits(reading.Ph), (ulong)reading.Method);
        return key;
    }
}
