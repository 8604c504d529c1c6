using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Turns days after packing into dates on the household's calendar.</summary>
/// <param name="Origin">Day 0.</param>
/// <param name="SpanDays">How far the forecast reaches, days after packing.</param>
/// <param name="Now">The present.</param>
/// <param name="Zone">The household's zone.</param>
public sealed record ForecastCalendar(Instant Origin, double SpanDays, Instant Now, DateTimeZone Zone)
{
    /// <summary>Today on the household's calendar.</summary>
    public LocalDate Today => Now.InZone(Zone).Date;

    /// <summary>The last date the forecast reaches.</summary>
    public LocalDate End => Date(SpanDays);

    /// <summary>How many dates today is from the date of packing; the day of packing is day 0.</summary>
    public int DayNumber => Period.DaysBetween(Origin.InZone(Zone).Date, Today);

    /// <summary>The date of a day after packing.</summary>
    public LocalDate Date(double day) => (Origin + Duration.FromDays(day)).InZone(Zone).Date;
}
