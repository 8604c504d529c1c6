using FermentWatch.Kinetics.Simulation;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>
/// What a forecast was made with, for the next one of the same jar: members that fit what was seen, and where they stood as far as
/// temperatures are known. A quarter hour of news then costs little more than the span ahead, and the answer is the same to the last bit
/// as one made anew.
/// </summary>
public sealed class KeptRun
{
    private readonly string _facts;

    internal KeptRun(string facts, KeptMembers lines, KeptMembers? tasting, IReadOnlyList<CoursePoint> course)
    {
        (_facts, Lines, Tasting) = (facts, lines, tasting);
        Course = lines.Reached is { } reached ? [.. course.TakeWhile(point => 24 * point.Day < reached.Hours)] : [];
    }

    /// <summary>Members of the lines and the course.</summary>
    internal KeptMembers Lines { get; }

    /// <summary>Members of the tasting day; null where it has none of its own.</summary>
    internal KeptMembers? Tasting { get; }

    /// <summary>The course until where the members of the lines stood.</summary>
    internal IReadOnlyList<CoursePoint> Course { get; }

    /// <summary>Itself, where everything but temperatures and present is as it was; else nothing.</summary>
    internal KeptRun? IfOf(string facts) => _facts == facts ? this : null;
}

/// <summary>Members that fit what was seen, and where they stood.</summary>
internal sealed class KeptMembers
{
    private readonly double[] _deviates;
    private readonly double _seenUntilHours;
    private readonly string _fittedIn;
    private readonly string? _reachedIn;

    /// <param name="deviates">[member x count + deviate].</param>
    /// <param name="evidence">What they were fitted to.</param>
    /// <param name="reached">Where they stood; null where nothing is kept of it.</param>
    /// <param name="climate">The jar's temperatures.</param>
    public KeptMembers(double[] deviates, Evidence evidence, Checkpoint? reached, JarClimate climate)
    {
        _deviates = deviates;
        _seenUntilHours = evidence.Days.Length == 0 ? 0 : (24 * evidence.Days[^1]) + Checkpoint.SlopeLooksAheadHours;
        _fittedIn = climate.NameUntil(_seenUntilHours);
        Reached = reached;
        _reachedIn = reached is null ? null : climate.NameUntil(reached.SeenUntilHours);
    }

    public Checkpoint? Reached { get; }

    /// <summary>The members, where the temperatures they were fitted in are as they were; else null.</summary>
    public double[]? In(JarClimate climate) => climate.NameUntil(_seenUntilHours) == _fittedIn ? _deviates : null;

    /// <summary>Where they stood, where temperatures until then are as they were; else null.</summary>
    public Checkpoint? ReachedIn(JarClimate climate) =>
        Reached is { } reached && climate.NameUntil(reached.SeenUntilHours) == _reachedIn ? reached : null;
}
