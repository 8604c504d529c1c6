using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kitchen.Planning;

/// <summary>When a jar put up is as sour as wanted, days after packing.</summary>
/// <param name="Early">One in ten is by then.</param>
/// <param name="Middle">Half are.</param>
/// <param name="Late">Nine in ten are.</param>
/// <param name="LineLate">Nine in ten are below pH 4.6 by then; null where fewer are within the span.</param>
public sealed record ReadyDays(double Early, double Middle, double Late, double? LineLate)
{
    /// <summary>Normally below 4.6 within a week (Univ. of Minnesota Extension 2021): what is expected later is not planned.</summary>
    public const double LatestLineDay = 7;

    /// <summary>The normal deviate below which nine in ten lie.</summary>
    private const double NinetiethPercentile = 1.2816;

    /// <summary>Whether the acid line is expected late.</summary>
    public bool IsLineLate => LineLate is not <= LatestLineDay;

    /// <summary>Between these days and others, in a straight line.</summary>
    /// <param name="other">The others.</param>
    /// <param name="share">How far towards them, 0 to 1.</param>
    public ReadyDays Towards(ReadyDays other, double share)
    {
        double Between(double from, double to) => from + (share * (to - from));
        return new ReadyDays(Between(Early, other.Early), Between(Middle, other.Middle), Between(Late, other.Late),
            LineLate is { } line && other.LineLate is { } otherLine ? Between(line, otherLine) : null);
    }

    /// <summary>The day at a standard normal deviate: through the three quantiles by a logarithmic normal distribution on either side.</summary>
    public double At(double deviate) => Middle * Math.Pow(deviate < 0 ? Middle / Early : Late / Middle, deviate / NinetiethPercentile);
}

/// <summary>What a room may bring from a start on: one temperature, and a spell in which it is warmer.</summary>
/// <param name="Celsius">Mean, Celsius.</param>
/// <param name="SpreadCelsius">Standard deviation of what it may really be.</param>
/// <param name="WarmFromDay">First day of the spell, days after the start.</param>
/// <param name="WarmUntilDay">Its end; not after the first where there is none.</param>
/// <param name="WarmByCelsius">By how much it is warmer then.</param>
public sealed record RoomAhead(double Celsius, double SpreadCelsius, int WarmFromDay = 0, int WarmUntilDay = 0, double WarmByCelsius = 0)
{
    /// <summary>The same as the model takes it.</summary>
    /// <param name="days">How far ahead.</param>
    public TemperatureCourse Course(int days)
    {
        if (WarmUntilDay <= WarmFromDay)
            return TemperatureCourse.Constant(Celsius, SpreadCelsius);
        IEnumerable<TemperatureStep> steps = Enumerable.Range(0, days * TemperatureCourse.StepsPerDay)
            .Select(step => step / TemperatureCourse.StepsPerDay)
            .Select(day => new TemperatureStep(Celsius + (day >= WarmFromDay && day < WarmUntilDay ? WarmByCelsius : 0), SpreadCelsius,
                InsideJar: false));
        return TemperatureCourse.FromSteps([.. steps], new TypicalRoom(Celsius, SpreadCelsius));
    }
}

/// <summary>Asks the model of every jar, once for each room there may be: the same days and spread as a jar's own forecast
/// without readings.</summary>
/// <param name="recipe">What goes in.</param>
/// <param name="acidityPercentLactic">How sour it should be.</param>
/// <param name="household">What finished jars taught; null where none did.</param>
public sealed class ReadyDayForecasts(JarRecipe recipe, double acidityPercentLactic, HouseholdPrior? household)
{
    /// <summary>A jar that takes longer is not planned.</summary>
    public const int LongestDays = 120;

    private const int UsualDays = 45, SomeDaysMore = 10;

    private readonly Dictionary<RoomAhead, ReadyDays?> _known = [];

    /// <summary>The days in such a room; null where fewer than nine in ten get there.</summary>
    public ReadyDays? Of(RoomAhead room)
    {
        if (!_known.TryGetValue(room, out ReadyDays? days))
            _known[room] = days = room.WarmUntilDay > room.WarmFromDay ? OfSpell(room) : Ask(room, UsualDays);
        return days;
    }

    /// <summary>A spell that comes when nine in ten are sour changes nothing, and one that comes before
    /// needs no longer span than usual and some.</summary>
    private ReadyDays? OfSpell(RoomAhead room)
    {
        if (Of(new RoomAhead(room.Celsius, room.SpreadCelsius)) is not { } usual)
            return Ask(room, LongestDays);
        return room.WarmFromDay >= usual.Late ? usual : Ask(room, Math.Min(LongestDays, (int)Math.Ceiling(usual.Late) + SomeDaysMore));
    }

    /// <summary>The forecast itself, for temperatures that change on the way.</summary>
    /// <param name="temperatures">From packing on.</param>
    /// <param name="days">Span from packing.</param>
    /// <param name="everyDays">Step of its course.</param>
    public Forecast Forecast(TemperatureCourse temperatures, double days, double everyDays) => Forecaster.Run(new ForecastRequest
    {
        Recipe = recipe, Temperatures = temperatures, Household = household, Days = days, EveryDays = everyDays,
        Target = new ForecastTarget(TargetKind.AcidityPercentLactic, acidityPercentLactic),
    });

    private ReadyDays? Ask(RoomAhead room, int span)
    {
        Forecast made = Forecast(room.Course(span), span, span);
        // Most are there in a few weeks; only where they are not is the long span worth its work.
        return made.Target is { P10: { } early, P50: { } middle, P90: { } late }
            ? new ReadyDays(Math.Max(early, 1), Math.Max(middle, 1), Math.Max(late, 1), made.AcidLine.P90)
            : span < LongestDays ? Ask(room, LongestDays) : null;
    }
}
