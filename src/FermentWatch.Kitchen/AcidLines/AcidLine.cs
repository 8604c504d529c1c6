using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.AcidLines;

/// <summary>
/// The rules of the acid line at pH 4.6. Method decides what counts: 21 CFR 114.80 (above pH 4.0 only a meter counts, at 4.0
/// or below strips will do); the margins of 0.2 and the buffer check of the day are this project's own, stricter rule.
/// </summary>
public static class AcidLine
{
    /// <summary>Below it Clostridium botulinum does not grow (Snyder, Breidt, Andress &amp; Ingham 2020, Food Protection Trends
    /// 40:251-263).</summary>
    public const double Ph = 4.6;

    /// <summary>A meter or probe reading counts as below up to here.</summary>
    public const double MeterCountsUpTo = 4.4;

    /// <summary>A strip counts as below up to here (21 CFR 114.80).</summary>
    public const double StripCountsUpTo = 4.0;

    /// <summary>A rise by the same method, of brine or of a blend, of more than this is an alarm once it is seen twice.</summary>
    public const double RiseThatMatters = 0.2;

    /// <summary>A sample is measured between these temperatures, Celsius (21 CFR 114.90).</summary>
    public const double SampleFromCelsius = 20, SampleUpToCelsius = 30;

    /// <summary>What one reading of a jar is worth. Bad news always counts: a high reading is never explained away.</summary>
    /// <param name="jar">The jar it was taken of.</param>
    /// <param name="measurement">The reading.</param>
    public static LineEvidence Weigh(Jar jar, PhMeasurement measurement)
    {
        LineEvidence weight = ByMethod(measurement);
        return weight == LineEvidence.CountsBelow && EveningOut.IsUnderWay(jar, measurement) ? LineEvidence.NotEvenedOut : weight;
    }

    private static LineEvidence ByMethod(PhMeasurement measurement)
    {
        if (measurement.Ph > Ph)
            return LineEvidence.CountsAbove;
        if (measurement.SampleCelsius is not (null or >= SampleFromCelsius and <= SampleUpToCelsius))
            return LineEvidence.SampleTooColdOrWarm;
        if (measurement.Method == PhMethod.Strip)
        {
            if (measurement.Ph > StripCountsUpTo)
                return LineEvidence.StripTooHigh;
            return measurement.PaleBrine ? LineEvidence.CountsBelow : LineEvidence.StripInDarkBrine;
        }
        if (measurement.Ph > MeterCountsUpTo)
            return LineEvidence.TooNear;
        return measurement.CheckedInBuffer ? LineEvidence.CountsBelow : LineEvidence.MeterNotChecked;
    }

    /// <summary>Whether it is so thick that the acid reaches the middle of it days after the brine; liquid and solids are blended then (21 CFR
    /// 114.90).</summary>
    public static bool IsInPieces(Jar jar) => jar.Cut is Cut.Whole or Cut.Pieces;

    /// <summary>Where a jar stands, from what was measured and stands.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="zone">The household's zone, in which days are told apart.</param>
    public static AcidLineReport Report(Jar jar, DateTimeZone zone) => Report(jar, jar.Standing.OfType<PhMeasurement>(), zone);

    /// <summary>Where a jar stands, from some of its measurements.</summary>
    /// <param name="jar">The jar: whether brine alone speaks for it, and whether vinegar went in.</param>
    /// <param name="measurements">Measurements that were not taken back, in any order.</param>
    /// <param name="zone">The household's zone, in which days are told apart.</param>
    public static AcidLineReport Report(Jar jar, IEnumerable<PhMeasurement> measurements, DateTimeZone zone)
    {
        var ordered = measurements.OrderBy(measurement => measurement.At).ThenBy(measurement => measurement.Ph).ToList();
        var counted = ordered.Where(measurement => Weigh(jar, measurement) is LineEvidence.CountsBelow or LineEvidence.CountsAbove).ToList();
        PhMeasurement? last = counted.LastOrDefault();
        AcidLineState state = last is null ? AcidLineState.NotMeasured
            : last.Ph > Ph ? AcidLineState.MeasuredAbove : AcidLineState.MeasuredBelow;
        AcidLineAlarm alarm = Alarm([.. ordered.Where(measurement => !EveningOut.IsUnderWay(jar, measurement))], counted);
        var below = Enumerable.Reverse(counted).TakeWhile(measurement => measurement.Ph <= Ph).ToList();
        bool onTwoDays = alarm == AcidLineAlarm.None && below.Select(measurement => measurement.At.InZone(zone).Date).Distinct().Count() >= 2;
        bool blendedMissing = IsInPieces(jar) && below.Count > 0 && !below.Exists(measurement => measurement.Blended);
        return new AcidLineReport(state, last, onTwoDays && !blendedMissing, alarm)
        {
            BlendedMissing = blendedMissing, AwaitsBlended = onTwoDays && blendedMissing,
            TooNear = ordered.LastOrDefault() is { } newest && Weigh(jar, newest) == LineEvidence.TooNear ? newest : null,
        };
    }

    private static AcidLineAlarm Alarm(List<PhMeasurement> ordered, List<PhMeasurement> counted)
    {
        if (counted.Count > 0 && counted[^1].Ph > Ph && counted.Exists(measurement => measurement.Ph <= Ph))
            return AcidLineAlarm.BackAbove;
        AcidLineAlarm worst = AcidLineAlarm.None;
        foreach (var alike in ordered.GroupBy(measurement => (measurement.Method, measurement.Blended)))
        {
            AcidLineAlarm alarm = RiseOf(alike.Select(measurement => measurement.Ph).ToList());
            worst = alarm > worst ? alarm : worst;
        }
        return worst;
    }

    private static AcidLineAlarm RiseOf(List<double> readings)
    {
        int risen = 0;
        double lowest = double.PositiveInfinity;
        foreach (double ph in readings)
        {
            risen = ph > lowest + RiseThatMatters ? risen + 1 : 0;
            lowest = Math.Min(lowest, ph);
        }
        return risen switch { 0 => AcidLineAlarm.None, 1 => AcidLineAlarm.RiseToRecheck, _ => AcidLineAlarm.Rise };
    }
}
