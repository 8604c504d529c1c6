using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>
/// What one jar needs on a date: the one rule that the round, its messages, the jar's page, the topic, the API and the calendar
/// ask. Opening two to three times a week and leaving a brine bag alone until the bubbling stops: USDA Complete Guide to Home
/// Canning, Guide 6. When to measure: <see cref="PhDue"/>; when to taste: <see cref="TastingPlan"/>. The rest: common practice,
/// no source.
/// </summary>
/// <param name="household">For its zone and what it can measure with.</param>
/// <param name="forecasts">The latest forecasts by jar.</param>
/// <param name="tasting">When people are asked to taste.</param>
/// <param name="dry">Places where the air is dry.</param>
public sealed class JarRules(Household household, IReadOnlyDictionary<Guid, JarForecast> forecasts, TastingPlan tasting, IReadOnlySet<Guid> dry)
{
    private const int OpenedEveryDays = 3;

    private readonly DateTimeZone _zone = household.Zone;

    /// <summary>Whether the surface is looked at on a day of a healthy jar.</summary>
    /// <param name="cover">What holds it under.</param>
    /// <param name="day">Days after packing.</param>
    /// <param name="celsius">Its temperature, Celsius; null where nothing is known of it.</param>
    public static bool OpensOn(Cover cover, int day, double? celsius) =>
        !IsLeftAlone(cover, day, celsius) && day >= OpenedEveryDays && day % OpenedEveryDays == 0;

    /// <summary>What a jar needs on a date.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="date">The date on the household's calendar.</param>
    /// <param name="dueAt">When its round is due.</param>
    public RoundJar On(Jar jar, LocalDate date, Instant dueAt)
    {
        LocalDate packed = DateOf(jar.PackedAt);
        int day = Period.DaysBetween(packed, date);
        TroubleState trouble = Trouble.Of(jar, _zone);
        AcidLineReport line = AcidLine.Report(jar, _zone);
        var answered = Answered.Of(jar).Select(answer => DateOf(answer.At)).Where(answer => answer <= date).ToHashSet();
        LocalDate lastAnswered = answered.Where(answer => answer < date).DefaultIfEmpty(packed).Max();
        int missed = Math.Max(0, Period.DaysBetween(lastAnswered, date) - 1);
        TasteAsk? taste = tasting.Of(jar, date);
        var lookFors = jar.Stage == JarStage.Fermenting ? LookFors(jar, day, date, dueAt, trouble, line, missed, taste).ToList() : [];
        bool opening = lookFors.Exists(each => each is LookFor.OpenForSurface or LookFor.LetGasOut or LookFor.Taste or LookFor.MeasurePh);
        var planned = new RoundJar(jar, day, lookFors, opening, trouble.CloserWatch ? trouble.Last : null, missed, answered.Contains(date))
        {
            Date = date, State = trouble, Line = line, Taste = taste,
        };
        return planned with { Step = NextStep.Of(planned, _zone) };
    }

    private IEnumerable<LookFor> LookFors(Jar jar, int day, LocalDate date, Instant dueAt, TroubleState trouble, AcidLineReport line, int missed,
        TasteAsk? taste)
    {
        double? celsius = forecasts.TryGetValue(jar.Id, out JarForecast? forecast) ? forecast.PointAt(dueAt).JarCelsius : null;
        bool bubbling = day <= BubblingEnds.Day(celsius), bagLeftAlone = IsLeftAlone(jar.Cover, day, celsius);
        yield return LookFor.BrineOverSolids;
        if (jar.Cover == Cover.Leaf)
            yield return LookFor.LeafUnder;
        if (!bagLeftAlone)
            yield return LookFor.NothingUp;
        if (day is >= 2 and <= 7)
            yield return LookFor.Bubbles;
        if (day is >= 2 and <= 5)
            yield return LookFor.TrayUnder;
        if (jar.Lid == Lid.WaterSealed)
            yield return LookFor.WaterInRim;
        if (jar.Lid == Lid.Tight && bubbling && day >= 2)
            yield return LookFor.LetGasOut;
        if (jar.Lid == Lid.Cloth || WarmthClasses.IsWarmRoom(celsius)
            || dry.Contains(jar.PlacementAt(date.AtStartOfDayInZone(_zone).ToInstant()).PlaceId))
            yield return LookFor.BrineDriesFast;
        if (trouble.CloserWatch || (!bagLeftAlone && missed >= Neglect.LongDays) || OpensOn(jar.Cover, day, celsius))
            yield return LookFor.OpenForSurface;
        // After a week unseen it is looked at first; tasting comes back with the look.
        if (missed < Neglect.WeekDays && taste?.Kind == TasteAskKind.Taste)
            yield return LookFor.Taste;
        if (taste?.Kind == TasteAskKind.Decide)
            yield return LookFor.Decide;
        if (household.Measures && (trouble.ForecastWithdrawn || PhDue.On(date, day, line, _zone)))
            yield return LookFor.MeasurePh;
    }

    private static bool IsLeftAlone(Cover cover, int day, double? celsius) => cover == Cover.BrineBag && day <= BubblingEnds.Day(celsius);

    private LocalDate DateOf(Instant instant) => instant.InZone(_zone).Date;
}
