using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>
/// What a forecast was made with, for the next one of the same jar: members that fit what was measured, and where they stood at the last
/// written time whose temperatures are known. A quarter hour of news then costs that quarter hour and the span ahead, and the answer
/// is the same to the last bit as one made anew.
/// </summary>
public sealed class KeptRun
{
    private readonly Fitted? _forLines;
    private readonly Fitted? _forTasting;
    private readonly Checkpoint? _reached;
    private readonly string? _reachedClimate;
    private readonly CoursePoint[] _course;

    private KeptRun(string facts, Fitted? forLines, Fitted? forTasting, Checkpoint? reached, JarClimate climate, IReadOnlyList<CoursePoint> course)
    {
        Facts = facts;
        _forLines = forLines;
        _forTasting = forTasting;
        _reached = reached;
        _reachedClimate = reached is null ? null : climate.NameUntil(reached.Hours);
        _course = [.. course];
    }

    /// <summary>Names everything of the jar but its temperatures, the length of the span and the present; given by the caller.</summary>
    public string Facts { get; }

    /// <summary>The same where everything but temperatures and present is as it was; else nothing.</summary>
    internal static KeptRun? Of(KeptRun? before, string facts) => before?.Facts == facts ? before : null;

    /// <summary>Members that fit, where the temperatures they were fitted to are as they were.</summary>
    internal double[]? ForLines(JarClimate climate) => _forLines?.In(climate);

    /// <summary>The same for the tasting day.</summary>
    internal double[]? ForTasting(JarClimate climate) => _forTasting?.In(climate);

    /// <summary>Where the members stood; null where temperatures until then are others.</summary>
    internal Checkpoint? Reached(JarClimate climate) => _reached is not null && climate.NameUntil(_reached.Hours) == _reachedClimate ? _reached : null;

    /// <summary>The course before that.</summary>
    internal IReadOnlyList<CoursePoint> Course => _course;

    /// <summary>Keeps what a forecast was made with.</summary>
    internal static KeptRun Of(string facts, JarClimate climate, Fitted lines, Fitted? tasting, MemberRun run) =>
        new(facts, lines, tasting, run.Kept, climate, [.. run.Course.Take(run.KeptTime)]);

    /// <summary>Members and what they were fitted in.</summary>
    /// <param name="Deviates">[member x count + deviate].</param>
    /// <param name="UntilHours">The last thing seen, hours after packing.</param>
    /// <param name="Climate">The temperatures until then.</param>
    internal sealed record Fitted(double[] Deviates, double UntilHours, string Climate)
    {
        public static Fitted Of(double[] deviates, Evidence evidence, JarClimate climate)
        {
            double until = evidence.Days.Length == 0 ? 0 : 24 * evidence.Days[^1];
            return new Fitted(deviates, until, climate.NameUntil(until));
        }

        public double[]? In(JarClimate climate) => climate.NameUntil(UntilHours) == Climate ? Deviates : null;
    }
}
