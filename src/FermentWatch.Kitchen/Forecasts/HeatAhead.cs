using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

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
        return first is null ? null : $"35 °C (95 °F) or more is expected in it {DateWords.When(LocalDate.Max(calendar.Today, calendar.Date(first.Day)), calendar.Today)}. {Advice}";
    }
}
