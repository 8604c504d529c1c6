using FermentWatch.Kinetics.Forecasting;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>What a forecast said on a day, kept so that forecasts can be scored against what happened.</summary>
/// <param name="JarId">The jar.</param>
/// <param name="AsOf">The last forecast of its UTC day.</param>
/// <param name="ModelVersion">The model that made it.</param>
/// <param name="AcidLine">Days after packing to pH 4.6.</param>
/// <param name="Target">Days after packing to the target.</param>
public sealed record ForecastMark(Guid JarId, Instant AsOf, string ModelVersion, PassageDays AcidLine, PassageDays? Target);
