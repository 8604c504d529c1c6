using FermentWatch.Kinetics.Forecasting;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>A forecast of one jar as it was saved. Derived: may be deleted and is computed again.</summary>
/// <param name="JarId">The jar.</param>
/// <param name="AsOf">End of the last closed quarter hour it knew.</param>
/// <param name="Origin">Day 0 of its course: the quarter hour of packing.</param>
/// <param name="Inputs">Names everything it was made from; the same inputs need no new forecast.</param>
/// <param name="Forecast">What the model expects.</param>
public sealed record JarForecast(Guid JarId, Instant AsOf, Instant Origin, string Inputs, Forecast Forecast)
{
    /// <summary>How much of <see cref="Inputs"/> names the household's facts; the rest names what sensors measured.</summary>
    internal const int FactsLength = 32;

    /// <summary>Names the facts it was made from: equal where only temperatures came in between.</summary>
    public string Facts => Inputs[..Math.Min(FactsLength, Inputs.Length)];

    /// <summary>The instant of a day of its course.</summary>
    public Instant At(double day) => Origin + Duration.FromDays(day);

    /// <summary>The point of its course nearest before an instant; the first for an instant before packing.</summary>
    public CoursePoint PointAt(Instant instant) =>
        Forecast.Course.LastOrDefault(point => At(point.Day) <= instant) ?? Forecast.Course[0];
}
