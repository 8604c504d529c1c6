using System.Globalization;
using NodaTime;

namespace FermentWatch.Kitchen.Health;

/// <summary>How one loop stands.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LastPass">When the last pass that went well began; null before the first.</param>
/// <param name="Trouble">What keeps it from its work, in one line; null when nothing does.</param>
/// <param name="IsDead">Whether it no longer runs at all, so that only a new start can help.</param>
public sealed record LoopHealth(string Name, Instant? LastPass, string? Trouble, bool IsDead);

/// <summary>What a loop says of itself.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LastPass">When the last pass that went well began; null before the first.</param>
/// <param name="LastSign">When it last gave any sign; null before the first.</param>
/// <param name="Trouble">Why its passes fail; null while they do not.</param>
/// <param name="FailingSince">When the first of these failed.</param>
public sealed record LoopSigns(string Name, Instant? LastPass, Instant? LastSign, string? Trouble, Instant? FailingSince);

/// <summary>Whoever asks the loops how they stand.</summary>
public interface IHealth
{
    /// <summary>The report as things stand.</summary>
    /// <param name="zone">In which a person reads dates; UTC where a machine asks.</param>
    HealthReport Read(DateTimeZone? zone = null);
}

/// <summary>How the service stands, told truthfully: to systemd, to <c>healthcheck</c>, to the page.</summary>
/// <param name="Loops">Every loop.</param>
/// <param name="SetAside">What passes could not digest; the rest goes on.</param>
/// <param name="Remarks">What an adult should know of the machine, a line each.</param>
public sealed record HealthReport(IReadOnlyList<LoopHealth> Loops, IReadOnlyList<SetAsideItem> SetAside, IReadOnlyList<string> Remarks)
{
    /// <summary>A loop wakes each minute; one that gave no sign for this long is dead or hangs. A pass over years of history may be long.</summary>
    private static readonly Duration Patience = Duration.FromMinutes(10);

    /// <summary>Whether every loop lives. When not, starting the service anew is what helps.</summary>
    public bool IsLive => !Loops.Any(loop => loop.IsDead);

    /// <summary>Whether the disk of the databases is full, so that what is entered may not be stored.</summary>
    public bool DiskIsFull { get; init; }

    /// <summary>Whether every loop does its work, and what is entered can be stored.</summary>
    public bool IsReady => !DiskIsFull && !Loops.Any(loop => loop.Trouble is not null);

    /// <summary>The report at an instant.</summary>
    /// <param name="loops">The loops.</param>
    /// <param name="setAside">What was set aside.</param>
    /// <param name="remarks">What an adult should know of the machine.</param>
    /// <param name="started">When the service started: loops have had no turn before.</param>
    /// <param name="now">The present.</param>
    public static HealthReport Of(IEnumerable<LoopSigns> loops, IReadOnlyList<SetAsideItem> setAside, IReadOnlyList<string> remarks,
        Instant started, Instant now) =>
        new([.. loops.Select(loop => Of(loop, started, now))], setAside, remarks);

    private static LoopHealth Of(LoopSigns loop, Instant started, Instant now)
    {
        Instant sign = loop.LastSign ?? started;
        bool dead = now - sign > Patience;
        string? trouble = dead ? $"no sign since {Clock(sign)}"
            : loop.Trouble is { } reason ? $"failing since {Clock(loop.FailingSince ?? sign)}: {reason}" : null;
        return new LoopHealth(loop.Name, loop.LastPass, trouble, dead);
    }

    private static string Clock(Instant instant) => instant.ToString("uuuu-MM-dd'T'HH:mm'Z'", CultureInfo.InvariantCulture);
}

/// <summary>Tells a failure of the disk or of a database from one of our own.</summary>
public interface IDiskTrouble
{
    /// <summary>What it is and what to do, for the household; null where the failure has another cause.</summary>
    string? WordsOf(Exception? trouble);
}
