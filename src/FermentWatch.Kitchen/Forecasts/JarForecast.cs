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

/// <summary>What a forecast said on a day, kept so that forecasts can be scored against what happened.</summary>
/// <param name="JarId">The jar.</param>
/// <param name="AsOf">The last forecast of its UTC day.</param>
/// <param name="ModelVersion">The model that made it.</param>
/// <param name="AcidLine">Days after packing to pH 4.6.</param>
/// <param name="Target">Days after packing to the target.</param>
public sealed record ForecastMark(Guid JarId, Instant AsOf, string ModelVersion, PassageDays AcidLine, PassageDays? Target);

/// <summary>Where derived forecasts are kept between renewals.</summary>
public interface IForecastBook
{
    /// <summary>
    /// Replaces the latest forecasts of these jars, each only where the one it was to replace is still the latest, and keeps the mark
    /// of each for its UTC day; all in one step.
    /// </summary>
    Task SaveAsync(IReadOnlyList<RenewedForecast> renewed, CancellationToken cancellationToken);

    /// <summary>Forgets the latest forecasts of these jars, of which nothing is forecast any more; their marks stay.</summary>
    Task ForgetAsync(IReadOnlyList<Guid> jars, CancellationToken cancellationToken);

    /// <summary>The latest forecast of every jar that has one.</summary>
    Task<IReadOnlyList<JarForecast>> LatestAsync(CancellationToken cancellationToken);

    /// <summary>The latest forecast of one jar, or null.</summary>
    Task<JarForecast?> LatestAsync(Guid jarId, CancellationToken cancellationToken);

    /// <summary>What was said of jars day by day, by jar, oldest first.</summary>
    Task<ILookup<Guid, ForecastMark>> MarksAsync(IReadOnlyCollection<Guid> jars, CancellationToken cancellationToken);
}

/// <summary>A forecast that was made anew.</summary>
/// <param name="Forecast">The new one.</param>
/// <param name="Replaces">The inputs of the one it takes the place of; null where there was none.</param>
public readonly record struct RenewedForecast(JarForecast Forecast, string? Replaces);
