using FermentWatch.Kitchen.Forecasts;
using NodaTime;

namespace FermentWatch.Storage.Records.Derived;

/// <summary>A forecast of one jar, written now and then. Derived: the row may be deleted while the service does not run.</summary>
internal sealed class ForecastRow
{
    public required Guid JarId { get; init; }

    public required Instant AsOf { get; set; }

    public required Instant Origin { get; set; }

    public required string Inputs { get; set; }

    /// <summary>The forecast as <see cref="ForecastCodec"/> writes it.</summary>
    public required byte[] Content { get; set; }

    internal static ForecastRow Of(JarForecast forecast) => new()
    {
        JarId = forecast.JarId,
        AsOf = forecast.AsOf,
        Origin = forecast.Origin,
        Inputs = forecast.Inputs,
        Content = ForecastCodec.Write(forecast.Forecast),
    };

    /// <summary>The forecast, or null where another version wrote it in a form that is no longer read: it is then derived again.</summary>
    internal JarForecast? Read() =>
        ForecastCodec.Read(Content) is { } forecast ? new JarForecast(JarId, AsOf, Origin, Inputs, forecast) : null;
}
