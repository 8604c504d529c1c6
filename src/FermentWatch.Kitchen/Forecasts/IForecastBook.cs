namespace FermentWatch.Kitchen.Forecasts;

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

    /// <summary>What was said of one jar day by day, oldest first.</summary>
    Task<IReadOnlyList<ForecastMark>> MarksAsync(Guid jarId, CancellationToken cancellationToken);
}

/// <summary>A forecast that was made anew.</summary>
/// <param name="Forecast">The new one.</param>
/// <param name="Replaces">The inputs of the one it takes the place of; null where there was none.</param>
public readonly record struct RenewedForecast(JarForecast Forecast, string? Replaces);
