using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Reads the household at one moment.</summary>
public sealed class OccasionFactsReader(IJarBook jars, IPlaceBook places, IForecastBook forecasts, IRoundBook rounds, ISensorBook sensors,
    IReadingLog log, ConcernReader concerns)
{
    /// <summary>The facts as things stand.</summary>
    public async Task<OccasionFacts> ReadAsync(Household household, Roster roster, Instant now, CancellationToken cancellationToken)
    {
        Instant asOf = QuarterHour.Floor(now);
        return new OccasionFacts
        {
            Household = household, Roster = roster, Now = now,
            Jars = await jars.KeptAsync(cancellationToken),
            Places = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id),
            Forecasts = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId),
            Temperatures = await TemperatureHistory.ReadAsync(log, await sensors.AllAsync(cancellationToken), asOf - WarmthOccasions.LooksBack,
                asOf, cancellationToken),
            Rounds = await rounds.ForTastingAsync(now.InZone(household.Zone).Date, cancellationToken),
            Sensors = await concerns.ReadAsync(household.TemperatureUnit, now, cancellationToken),
        };
    }
}
