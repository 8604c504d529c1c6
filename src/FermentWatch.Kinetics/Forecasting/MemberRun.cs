using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Members run through the span of a request: their course, and their days at every level that is asked for.</summary>
internal sealed class MemberRun
{
    private readonly double[] _scratch;
    private readonly Trace _trace;
    private readonly JarClimate _climate;
    private readonly Passage[] _passages;

    /// <param name="request">What is asked for.</param>
    /// <param name="jar">The jar.</param>
    /// <param name="deviates">The members.</param>
    /// <param name="kept">Where they stood in the forecast before; null for a run from packing on.</param>
    /// <param name="knownDays">Up to when temperatures are known, days after packing; where the members stand then is kept.</param>
    public MemberRun(ForecastRequest request, JarMembers jar, double[] deviates, KeptRun? kept = null, double knownDays = 0)
    {
        int members = request.Members;
        Passage Line(Watched watched, double level) => new(watched, level, members);
        _passages =
        [
            Line(Watched.BrinePh, 4.6), Line(Watched.BrinePh, 4.0), Line(Watched.CentrePh, 4.6), Line(Watched.CentrePh, 4.0),
            .. request.Target is { } target ? [Line(WatchedOf(target.Kind), target.Level)] : Array.Empty<Passage>(),
        ];
        _scratch = new double[members];
        _climate = jar.Climate;
        double[] days = OutputDays(request.Days, request.EveryDays);
        Checkpoint? from = kept?.Lines.ReachedIn(jar.Climate);
        int begin = from is null ? 0 : Math.Max(0, Array.FindIndex(days, day => 24 * day == from.Hours));
        from = begin > 0 ? from : null;
        var table = new LaneTable(members);
        _trace = new Trace(members, days[begin..], _passages);
        Reached = Checkpoint.AtWrittenTime(24 * knownDays, table, _trace, from);
        jar.Run(deviates, table, _trace, from: from, keep: Reached == from ? null : Reached);
        Course = [.. from is null ? [] : kept!.Course, .. Enumerable.Range(0, _trace.Days.Length).Select(Point)];
    }

    /// <summary>Where the members stood at the last written time whose temperatures are known; null before the first.</summary>
    public Checkpoint? Reached { get; }

    public PassageDays AcidLine => Days(0);

    public PassageDays Ph4 => Days(1);

    public PassageDays CentreAcidLine => Days(2);

    public PassageDays CentrePh4 => Days(3);

    /// <summary>Null without a target.</summary>
    public PassageDays? Target => _passages.Length > 4 ? Days(4) : null;

    public IReadOnlyList<CoursePoint> Course { get; }

    /// <summary>Gas made, by time of the course.</summary>
    public IReadOnlyList<GasPoint> Gas =>
        [.. Enumerable.Range(0, _trace.Days.Length).Select(time =>
            new GasPoint(_trace.Days[time], QuantileOf.Values(_trace.At(_trace.GasPerDay, time), _scratch)))];

    private PassageDays Days(int passage) => QuantileOf.Days(_passages[passage].Days, _scratch);

    private CoursePoint Point(int time) => new(
        _trace.Days[time],
        _climate.At(24 * _trace.Days[time]),
        QuantileOf.Values(_trace.At(_trace.Ph, time), _scratch),
        QuantileOf.Values(_trace.At(_trace.Acidity, time), _scratch),
        QuantileOf.Values(_trace.At(_trace.Sourness, time), _scratch).P50,
        QuantileOf.Values(_trace.At(_trace.CentrePh, time), _scratch));

    private static Watched WatchedOf(TargetKind kind) => kind switch
    {
        TargetKind.Ph => Watched.BrinePh,
        TargetKind.AcidityPercentLactic => Watched.Acidity,
        _ => Watched.Sourness,
    };

    /// <summary>Day 0, each step, and the last day.</summary>
    private static double[] OutputDays(double days, double everyDays)
    {
        var output = new List<double> { 0 };
        for (int i = 1; i * everyDays < days - (0.25 * TemperatureCourse.StepDays); i++)
            output.Add(i * everyDays);
        output.Add(days);
        return [.. output];
    }
}
