using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>
/// Days 1 to 7 of a jar in words. When the bubbling comes and goes by warmth is common practice, no source; what the sources
/// say is named where it stands.
/// </summary>
public static class DayByDay
{
    public const int Days = 7;

    /// <summary>The notes of days 1 to 7.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="meanCelsius">Mean temperature it has or may have over its first week.</param>
    /// <param name="notTastedBefore">The date before which tasting is not offered.</param>
    /// <param name="zone">The household's zone.</param>
    public static IReadOnlyList<DayNote> Of(Jar jar, double meanCelsius, LocalDate notTastedBefore, DateTimeZone zone)
    {
        LocalDate packed = jar.PackedAt.InZone(zone).Date;
        Warmth warmth = WarmthClasses.Of(meanCelsius);
        return [.. Enumerable.Range(1, Days).Select(day =>
        {
            Bubbling bubbling = BubblingCourse.On(day, warmth);
            LocalDate date = packed.PlusDays(day);
            return new DayNote(day, date, BubblingCourse.Looks(day, warmth),
                ToDo(jar, day, bubbling, meanCelsius) + (date < notTastedBefore ? " No tasting yet." : ""));
        })];
    }

    private static string ToDo(Jar jar, int day, Bubbling bubbling, double celsius)
    {
        var lines = new List<string> { Main(day, bubbling, jar) };
        if (JarRules.OpensOn(jar.Cover, day, celsius))
            lines.Add("Open it: surface and rim clean?");
        if (jar.Lid == Lid.Tight && bubbling is not Bubbling.None)
            lines.Add("Let gas out once.");
        if (jar.Lid == Lid.WaterSealed && day is 2 or 5)
            lines.Add("Check the water in the rim.");
        if (jar.Cover == Cover.BrineBag && bubbling is not Bubbling.Over)
            lines.Add("Leave the brine bag alone.");
        return string.Join(' ', lines);
    }

    private static string Main(int day, Bubbling bubbling, Jar jar) => day switch
    {
        1 => "Look that brine covers everything. If it does not, press down; if still not, add brine, never plain water.",
        7 => "Measure the pH today if you can: public advice is below 4.6 within a week, later when cooler (Univ. of Minnesota Extension 2021).",
        _ => bubbling switch
        {
            Bubbling.Liveliest => jar.Cover == Cover.BrineBag
                ? "Look through the glass; wipe up what ran over."
                : "Look through the glass; press pieces under that come up. A tray catches what runs over.",
            Bubbling.Over => "Brine over the vegetables, rim clean.",
            _ => "Look through the glass: brine over the vegetables, nothing afloat.",
        },
    };
}

/// <summary>What one of the first days looks like, and what to do.</summary>
/// <param name="Day">1 to 7; the day of packing is day 0.</param>
/// <param name="Date">Its date on the household's calendar.</param>
/// <param name="Looks">What is normal to see.</param>
/// <param name="Do">What to do that day.</param>
public sealed record DayNote(int Day, LocalDate Date, string Looks, string Do);
