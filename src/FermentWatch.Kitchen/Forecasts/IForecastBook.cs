namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Where derived forecasts are kept between renewals.</summary>
public interface IForecastBook
{
    /// <summary>Replaces the latest forecasts of these jars and keeps the mark of each for its UTC day.</summary>
    Task SaveAsync(IReadOnlyList<JarForecast> forecasts, CancellationToken cancellationToken);

    /// <summary>The latest forecast of every jar that has one.</summary>
    Task<IReadOnlyList<JarForecast>> LatestAsync(CancellationToken cancellationToken);

    /// <summary>The latest forecast of one jar, or null.</summary>
    Task<JarForecast?> LatestAsync(Guid jarId, CancellationToken cancellationToken);

    /// <summary>What was said of one jar day by day, oldest first.</summary>
    Task<IReadOnlyList<ForecastMark>> MarksAsync(Guid jarId, CancellationToken cancellationToken);
}
