using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;

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
