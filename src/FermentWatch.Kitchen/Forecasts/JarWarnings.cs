using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>What is said of one jar as long as it is so: what went in, and what is ahead of it.</summary>
public static class JarWarnings
{
    private const string ChilliMash =
        "Chilli mash without a starter may stay above 4.6: a published one stood at 4.83 after 15 days (abstract, authors not shown). Measure it "
        + "before you trust any day told here.";

    private const string LowSalt =
        "Salted below 1.5 %: the wrong germs may keep up with those that sour, and it goes soft (at 1.7 % or less: Univ. of Minnesota Extension; "
        + "Oregon State SP 50-745). "
        + "Measure the pH early and often: only a reading says anything of this jar.";

    /// <summary>Every warning that holds, the most pressing first.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="forecast">What is expected of it; null where nothing is.</param>
    /// <param name="calendar">Turns days into dates.</param>
    public static IEnumerable<string> Of(Jar jar, Forecast? forecast, ForecastCalendar calendar)
    {
        if (forecast is not null && HeatAhead.Of(forecast.Course, calendar) is { } heat)
            yield return heat;
        if (jar.Salting.Percent < SaltDose.LowestPercent)
            yield return LowSalt;
        if (TestedRecipe.MainVegetable(jar) is { MashMayStayAboveTheLine: true } && jar.Starter is null)
            yield return ChilliMash;
    }
}

/// <summary>
/// A room, measured or expected, in which the bacteria that sour no longer keep up: the starters grow up to 37 C and best at 15 to 25
/// (Mun, Seo &amp; Chang, Foods, Leuconostoc gelidum from kimchi); germs of disease go on to 45 C and more (USDA-ARS growth limits
/// after ICMSF 1996). That 35 C is where it is told is this project's own rule.
/// </summary>
public static class HeatAhead
{
    /// <summary>From here on it is warned about.</summary>
    public const double Celsius = 35;

    /// <summary>What to do.</summary>
    public const string Advice = "The bacteria that sour it hardly keep up there, others thrive. Move it somewhere cooler now, and measure the pH.";

    /// <summary>What is said of a jar that is expected to stand so warm; null where none of the days ahead is.</summary>
    /// <param name="course">Its expected course.</param>
    /// <param name="calendar">Turns days into dates.</param>
    public static string? Of(IEnumerable<CoursePoint> course, ForecastCalendar calendar)
    {
        double now = (calendar.Now - calendar.Origin).TotalDays;
        CoursePoint? first = course.FirstOrDefault(point => point.Day >= now - 0.5 && point.JarCelsius >= Celsius);
        return first is null ? null : "35 °C (95 °F) or more is expected in it "
            + $"{DateWords.When(LocalDate.Max(calendar.Today, calendar.Date(first.Day)), calendar.Today)}. {Advice}";
    }
}
