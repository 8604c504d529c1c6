using FermentWatch.Kinetics.Forecasting;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>When to pack for a jar to be ready on a date, where the days after packing are as they were given.</summary>
/// <param name="Date">When it should be ready.</param>
/// <param name="NineOfTen">The last date on which nine in ten are ready by then; null where fewer are within the span.</param>
/// <param name="Half">The last date on which half of them are; null likewise.</param>
public sealed record PackBy(LocalDate Date, LocalDate? NineOfTen, LocalDate? Half)
{
    /// <summary>The dates for a level that is reached on these days after packing.</summary>
    public static PackBy For(LocalDate date, PassageDays days) => new(date, Before(date, days.P90), Before(date, days.P50));

    private static LocalDate? Before(LocalDate date, double? days) => days is { } known ? date.PlusDays(-(int)Math.Ceiling(known)) : null;
}
