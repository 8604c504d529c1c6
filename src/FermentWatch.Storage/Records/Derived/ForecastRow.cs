using System.Text.Json;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using NodaTime;

namespace FermentWatch.Storage.Records.Derived;

/// <summary>The latest forecast of one jar. Derived: the row may be deleted at any time.</summary>
internal sealed class ForecastRow
{
    public required Guid JarId { get; init; }

    public required Instant AsOf { get; set; }

    public required Instant Origin { get; set; }

    public required string Inputs { get; set; }

    /// <summary>The forecast as JSON; its doubles come back to the last bit.</summary>
    public required string Content { get; set; }

    internal static ForecastRow Of(JarForecast forecast) => new()
    {
        JarId = forecast.JarId,
        AsOf = forecast.AsOf,
        Origin = forecast.Origin,
        Inputs = forecast.Inputs,
        Content = JsonSerializer.Serialize(forecast.Forecast),
    };

    /// <summary>The forecast, or null where another version wrote it in a form that is no longer read: it is then derived again.</summary>
    internal JarForecast? Read()
    {
        try
        {
            return new JarForecast(JarId, AsOf, Origin, Inputs, JsonSerializer.Deserialize<Forecast>(Content)!);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
