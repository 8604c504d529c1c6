using FermentWatch.Export.Points;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Export.Tests.Doubles;

/// <summary>A small household: a counter with a sensor and jar 14, a cellar to which the jar goes on the second day.</summary>
internal static class Make
{
    internal static readonly Instant Noon = Instant.FromUtc(2026, 10, 4, 12, 0);

    internal static readonly Place Counter = Place("kitchen counter"), Cellar = Place("cellar");

    internal static readonly Jar Jar14 = Jar(14, (Counter, Noon), (Cellar, Noon + Duration.FromDays(1)));

    internal static Place Place(string name) => new() { Id = Guid.CreateVersion7(), Name = name, Typical = TypicalTemperature.Usual };

    internal static Jar Jar(int number, params (Place Place, Instant From)[] stood)
    {
        var jar = new Jar
        {
            Id = Guid.CreateVersion7(), Number = number, Name = "cabbage", BatchId = Guid.CreateVersion7(), PackedAt = Noon,
            Portions = [new Portion("cabbage", 0.8)], Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1,
            Cover = Cover.Leaf, Lid = Lid.Vented, Target = Sourness.Sour,
        };
        foreach ((Place place, Instant from) in stood)
            jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = place.Id, From = from });
        return jar;
    }

    internal static Sensor Sensor(int key, string slug, Guid? placeId = null, Guid? jarId = null)
    {
        var sensor = new Sensor { Id = Guid.CreateVersion7(), Key = key, Slug = slug, Name = slug, AddedAt = Noon };
        if (placeId is not null || jarId is not null)
            sensor.Placements.Add(
                new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = placeId, JarId = jarId, From = Noon });
        return sensor;
    }

    internal static OwnerNames Names(params Sensor[] sensors) => new(sensors, [Jar14], [Counter, Cellar]);

    internal static Reading Reading(int sensorKey, Quantity quantity, double value, Duration after) =>
        new(sensorKey, quantity, value, Noon + after, Noon + after, TimeSource.Payload);

    internal static SavedEstimate Estimate(Guid jarId, Instant at) => new(jarId, at, "inputs")
    {
        PhP10 = 3.875, PhP50 = 4.0625, PhP90 = 4.5, AcidityPercentLacticP50 = 0.75, SournessP50 = 61.5, DaysToTargetP50 = 2.25,
    };
}
