using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using NodaTime;

namespace FermentWatch.Storage.Records.Derived;

/// <summary>What was forecast of one jar on one UTC day, with the passages as columns for scoring.</summary>
internal sealed class ForecastMarkRow
{
    public required Guid JarId { get; init; }

    public required LocalDate Day { get; init; }

    public required Instant AsOf { get; init; }

    public required string ModelVersion { get; init; }

    public double? AcidLineP10 { get; init; }

    public double? AcidLineP50 { get; init; }

    public double? AcidLineP90 { get; init; }

    /// <summary>Whether there was a target at all; its days may still all be null.</summary>
    public required bool HasTarget { get; init; }

    public double? TargetP10 { get; init; }

    public double? TargetP50 { get; init; }

    public double? TargetP90 { get; init; }

    internal static ForecastMarkRow Of(JarForecast forecast)
    {
        var (acidLine, target) = (forecast.Forecast.AcidLine, forecast.Forecast.Target);
        return new()
        {
            JarId = forecast.JarId,
            Day = forecast.AsOf.InUtc().Date,
            AsOf = forecast.AsOf,
            ModelVersion = forecast.Forecast.ModelVersion,
            AcidLineP10 = acidLine.P10,
            AcidLineP50 = acidLine.P50,
            AcidLineP90 = acidLine.P90,
            HasTarget = target is not null,
            TargetP10 = target?.P10,
            TargetP50 = target?.P50,
            TargetP90 = target?.P90,
        };
    }

    internal ForecastMark Read() => new(
        JarId, AsOf, ModelVersion,
        new PassageDays(AcidLineP10, AcidLineP50, AcidLineP90),
        HasTarget ? new PassageDays(TargetP10, TargetP50, TargetP90) : null);
}

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
