using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Occasions;

/// <summary>Scenes of an invented kitchen in UTC; a day ends at 20:00, after the evening's reminder.</summary>
internal static class FactsOf
{
    public static readonly LocalTime Morning = new(7, 30), Evening = new(20, 0);

    public static Household Household(TemperatureUnit temperature = TemperatureUnit.Celsius, MassUnit mass = MassUnit.Kilogram)
    {
        Household household = Make.Household("UTC");
        household.TemperatureUnit = temperature;
        household.MassUnit = mass;
        return household;
    }

    /// <summary>Somebody on record as an adult.</summary>
    public static Member Adult(string name) => new(name, MemberRole.Adult, new Duty { Person = name });

    /// <summary>The facts of a day after packing.</summary>
    public static OccasionFacts Day(int day, LocalTime time, Jar[] jars, JarForecast[]? forecasts = null, Household? household = null,
        TemperatureHistory? temperatures = null, Member[]? members = null, SensorConcern[]? sensors = null) => new()
    {
        Household = household ?? Household(),
        Now = (Make.Packed.InUtc().Date.PlusDays(day) + time).InUtc().ToInstant(),
        Jars = jars,
        Places = new[] { Make.Counter, Make.Cellar }.ToDictionary(place => place.Id),
        Forecasts = (forecasts ?? []).ToDictionary(forecast => forecast.JarId),
        Temperatures = temperatures ?? TemperatureHistory.Empty,
        Roster = new Roster(members ?? [Adult("Ada"), Adult("Mira")], [], []),
        Sensors = sensors ?? [],
    };

    /// <summary>A history of the counter: these Celsius means, a quarter hour each, the last one just before the instant.</summary>
    public static async Task<TemperatureHistory> TemperaturesAsync(Instant until, params double[] quarters)
    {
        var sensor = new Sensor { Id = Guid.NewGuid(), Key = 1, Slug = "counter", Name = "counter", AddedAt = Make.Packed };
        sensor.Placements.Add(new SensorPlacement { Id = Guid.NewGuid(), SensorId = sensor.Id, PlaceId = Make.Counter.Id, From = Instant.MinValue });
        Instant end = QuarterHour.Floor(until);
        IReadOnlyList<ReadingMean> means =
            [.. quarters.Select((celsius, i) => new ReadingMean(end - (QuarterHour.Length * (quarters.Length - i)), celsius, celsius, celsius, 1))];
        var log = Substitute.For<IReadingLog>();
        log.MeansAsync(1, Quantity.Temperature, MeanSpan.QuarterHour, Arg.Any<Instant>(), Arg.Any<Instant>(), Arg.Any<CancellationToken>())
            .Returns(means);
        return await TemperatureHistory.ReadAsync(log, [sensor], end - Duration.FromDays(3), end, CancellationToken.None);
    }

    /// <summary>The kinds that hold, in the order of the rules.</summary>
    public static IEnumerable<OccasionKind> Kinds(OccasionFacts facts) =>
        OccasionRules.Of(facts, Make.SetAside().Begin("occasion")).Select(each => each.Kind);
}
