using System.Globalization;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Away;

/// <summary>
/// What jars will need in days when nobody is there. What to do about it is common practice, no source; days of the acid line
/// and of gas are those of the round.
/// </summary>
/// <param name="facts">The household as it stands.</param>
/// <param name="from">The first date away.</param>
/// <param name="until">The date of coming back.</param>
public sealed class BeforeYouGo(OccasionFacts facts, LocalDate from, LocalDate until)
{
    /// <summary>A jar put up within so many days of leaving has its liveliest days alone; this project's own rule.</summary>
    public const int StartedWithinDays = 5;

    private const int LongDays = 4;
    private const int WeekRuleDay = 7;

    /// <summary>Jars that will need something, by number.</summary>
    public IReadOnlyList<AwayNeed> Needs() =>
        [.. facts.Fermenting.OrderBy(jar => jar.Number).Select(Of).OfType<AwayNeed>()];

    /// <summary>Whether a jar put up on a date stands alone too soon.</summary>
    public static bool IsTooSoon(LocalDate packed, LocalDate from) => packed <= from && Period.DaysBetween(packed, from) <= StartedWithinDays;

    private AwayNeed? Of(Jar jar)
    {
        LocalDate packed = facts.DateOf(jar.PackedAt);
        JarForecast? forecast = facts.Forecasts.GetValueOrDefault(jar.Id);
        double? celsius = forecast?.PointAt(facts.Now).JarCelsius;
        bool gas = jar.Lid == Lid.Tight && packed.PlusDays(BubblingEnds.Day(celsius)) >= from && packed.PlusDays(2) < until;
        TroubleState trouble = Trouble.Of(jar, facts.Zone);
        var lines = new List<string>();
        if (gas)
            lines.Add("Tight lid while it bubbles: gas must be let out every day. Change to a vented lid, or ask somebody.");
        if (trouble is { CloserWatch: true, Last: { } seen })
            lines.Add($"On the closer watch after {ObservationWords.Of(seen.Kind)}: settle it before you go, or ask somebody to look every day.");
        if (IsTooSoon(packed, from))
            lines.Add("Put up within five days of leaving: its liveliest days are those you are away. A tray under it, everything pressed "
                + $"under{(jar.Cover == Cover.BrineBag ? "" : ", weight on top")}.");
        lines.AddRange(Line(jar, packed));
        lines.AddRange(Tasting(jar, forecast));
        lines.AddRange(Standing(jar, celsius));
        return lines.Count == 0 ? null : new AwayNeed(jar, facts.Places[jar.PlacementAt(facts.Now).PlaceId].Name, lines, gas || trouble.CloserWatch);
    }

    private IEnumerable<string> Line(Jar jar, LocalDate packed)
    {
        AcidLineState state = AcidLine.Report(jar, facts.Zone).State;
        LocalDate dayOfRule = packed.PlusDays(WeekRuleDay);
        if (state == AcidLineState.MeasuredBelow || dayOfRule >= until || !facts.Household.Measures)
            yield break;
        yield return dayOfRule >= from
            ? $"Day 7 is {DateWords.Name(dayOfRule, facts.Today)}, and no reading below 4.6 counts yet: measure the pH before you go, and when you "
                + "are back."
            : "No reading below 4.6 counts yet: measure the pH before you go.";
    }

    private IEnumerable<string> Tasting(Jar jar, JarForecast? forecast)
    {
        if (jar.Standing.OfType<Taste>().LastOrDefault()?.Verdict is TasteVerdict.Right or TasteVerdict.PastIt)
            yield return "Tasted right or past it: into the cold before you go.";
        else if (forecast is not null && facts.Tasting.Of(jar, facts.Today)?.From is { } taste && taste < until)
            yield return taste <= facts.Today
                ? "Ready to be tasted: taste it before you go; if it is right, into the cold."
                : $"Probably sour enough {DateWords.When(taste, facts.Today)}, while you are away or before: taste it the day you go. The cold "
                    + "slows it, if it is nearly right.";
    }

    private IEnumerable<string> Standing(Jar jar, double? celsius)
    {
        int days = Period.DaysBetween(from, until);
        if (jar.Lid == Lid.WaterSealed)
            yield return "Fill the water in the rim to the brim.";
        if (jar.Lid == Lid.Cloth || WarmthClasses.IsWarmRoom(celsius))
            yield return "Brine dries fast here: top up with brine, never plain water, or move it somewhere cooler.";
        if (days >= LongDays && jar.Cover == Cover.Leaf && jar.Lid != Lid.Tight)
            yield return string.Create(CultureInfo.InvariantCulture, $"{days} days unseen under a leaf: add a weight.");
    }
}

/// <summary>What one jar will need while nobody is there.</summary>
/// <param name="Jar">The jar.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Lines">What it needs and what to do before leaving, the most pressing first; at least one.</param>
/// <param name="Daily">Whether it needs somebody every day: ask somebody to look in.</param>
public sealed record AwayNeed(Jar Jar, string Place, IReadOnlyList<string> Lines, bool Daily);
