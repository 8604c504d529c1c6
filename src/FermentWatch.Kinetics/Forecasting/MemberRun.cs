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

    public MemberRun(ForecastRequest request, JarMembers jar, double[] deviates)
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
        _trace = new Trace(members, OutputDays(request.Days, request.EveryDays), _passages);
        jar.Run(deviates, new LaneTable(members), _trace);
    }

    public PassageDays AcidLine => Days(0);

    public PassageDays Ph4 => Days(1);

    public PassageDays CentreAcidLine => Days(2);

    public PassageDays CentrePh4 => Days(3);

    /// <summary>Null without a target.</summary>
    public PassageDays? Target => _passages.Length > 4 ? Days(4) : null;

    public IReadOnlyList<CoursePoint> Course => [.. Enumerable.Range(0, _trace.Days.Length).Select(Point)];

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
