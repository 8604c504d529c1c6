using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>What is expected of a jar that stands in a place from a day on.</summary>
/// <param name="Place">The place.</param>
/// <param name="FromDay">Since when, days after packing.</param>
/// <param name="Forecast">What the model expects then.</param>
public sealed record WhatIf(Place Place, double FromDay, Forecast Forecast)
{
    /// <summary>Its course at a day after packing: the point nearest before it.</summary>
    public CoursePoint At(double day) => Forecast.Course.LastOrDefault(point => point.Day <= day) ?? Forecast.Course[0];

    /// <summary>Works it out for one move; a forecast of some tens of milliseconds.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="places">Every place it stood in.</param>
    /// <param name="history">Closed means, as <see cref="Surroundings"/> asks for them.</param>
    /// <param name="saved">Its latest forecast.</param>
    /// <param name="to">Where it would go.</param>
    /// <param name="fromDay">When, days after packing; not before what the forecast knows.</param>
    public static WhatIf Moved(Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, JarForecast saved, Place to,
        double fromDay)
    {
        double from = Math.Max(fromDay, QuarterHour.Days(saved.Origin, saved.AsOf));
        ForecastRequest request = RequestOf(jar, places, history, saved);
        return new WhatIf(to, from, Forecaster.Run(request with { Temperatures = request.Temperatures.ThenIn(from, to.Typical.Room(),
            request.Days) }));
    }

    /// <summary>What the saved forecast was asked with.</summary>
    internal static ForecastRequest RequestOf(Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, JarForecast saved)
    {
        double days = saved.Forecast.Course[^1].Day;
        return JarForecaster.Request(jar, Surroundings.Of(jar, places, history, saved.AsOf, days),
            days) with { Household = saved.Forecast.Household };
    }
}

/// <summary>A move that is thought of: from a day on a jar stands somewhere else. What <c>outlook --move</c> and the jar's page ask with.</summary>
public static class PlannedStay
{
    /// <summary>This course until a day, and from then on a place of one mean temperature.</summary>
    /// <param name="course">The temperatures as they are and may be.</param>
    /// <param name="fromDay">Days after packing.</param>
    /// <param name="place">The place: its mean and how far it may be off.</param>
    /// <param name="days">Span that is asked for, days after packing.</param>
    public static TemperatureCourse ThenIn(this TemperatureCourse course, double fromDay, TypicalRoom place, double days)
    {
        // A course repeats its last day past its end: after a move that must be a day in the new place, so the whole span is given.
        var stay = new TemperatureStep(place.MeanCelsius, place.SpreadCelsius, InsideJar: false);
        return course.Then(fromDay, TemperatureCourse.FromSteps([.. Enumerable.Repeat(stay,
            (int)Math.Ceiling((days + 1) * TemperatureCourse.StepsPerDay))], place));
    }
}

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
