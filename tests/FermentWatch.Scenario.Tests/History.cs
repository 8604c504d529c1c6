using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Scenario.Tests;

/// <summary>What happened to one jar over three days, as facts without an order of arrival.</summary>
/// <param name="Readings">Minute after packing and Celsius, a minute at most once.</param>
/// <param name="Measurements">Hour after packing and pH.</param>
/// <param name="MovedAtHour">When it went to the cellar; null if it stayed.</param>
internal sealed record History(IReadOnlyList<(int Minute, double Celsius)> Readings, IReadOnlyList<(int Hour, double Ph)> Measurements,
    int? MovedAtHour)
{
    public static readonly Instant Packed = Instant.FromUtc(2026, 10, 1, 6, 0);

    public static readonly Instant End = Packed + Duration.FromDays(3);

    private static readonly Guid JarId = new("0199a000-0000-7000-8000-000000000010");
    private static readonly Guid CounterId = new("0199a000-0000-7000-8000-000000000011");
    private static readonly Guid CellarId = new("0199a000-0000-7000-8000-000000000012");
    private static readonly Guid SensorId = new("0199a000-0000-7000-8000-000000000013");

    /// <summary>Files the places, the sensor and the jar.</summary>
    public static async Task PrepareAsync(Kitchen kitchen)
    {
        await kitchen.Places.AddAsync(new Place { Id = CounterId, Name = "counter", ShelfOrder = 1, Typical = TypicalTemperature.Usual }, default);
        await kitchen.Places.AddAsync(new Place { Id = CellarId, Name = "cellar", ShelfOrder = 2, Typical = TypicalTemperature.Cellar }, default);
        var sensor = new Sensor { Id = SensorId, Slug = "counter", Name = "counter", AddedAt = Packed };
        sensor.Placements.Add(new SensorPlacement { Id = Guid.NewGuid(), SensorId = SensorId, PlaceId = CounterId, From = Packed });
        await kitchen.Sensors.AddAsync(sensor,
            new MqttCredential { Id = Guid.NewGuid(), User = "counter", PasswordHash = "-", TopicFilter = "x", SensorId = SensorId }, default);
        var jar = new Jar
        {
            Id = JarId, Name = "cabbage", BatchId = JarId, PackedAt = Packed, Portions = [new Portion("cabbage", 0.8)], Cut = Cut.Shredded,
            Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1, Cover = Cover.Leaf, Lid = Lid.Vented, Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.NewGuid(), JarId = JarId, PlaceId = CounterId, From = Packed });
        await kitchen.Jars.AddAsync([jar], default);
    }

    /// <summary>Every fact as something to be filed, in the order of time.</summary>
    public IEnumerable<Func<Kitchen, Task>> Facts()
    {
        foreach ((int minute, double celsius) in Readings)
            yield return kitchen => kitchen.Intake.AppendAsync([Reading(minute, celsius)], default);
        foreach ((int hour, double ph) in Measurements)
            yield return kitchen => kitchen.Jars.ObserveAsync([Measurement(hour, ph)], default);
        if (MovedAtHour is { } moved)
            yield return kitchen =>
                kitchen.Jars.MoveAsync(
                new JarPlacement { Id = Guid.NewGuid(), JarId = JarId, PlaceId = CellarId, From = Packed + Duration.FromHours(moved) }, default);
    }

    /// <summary>The same facts by detours: readings twice, measurements entered wrongly first and then corrected.</summary>
    public IEnumerable<Func<Kitchen, Task>> Detours()
    {
        foreach (var fact in Facts().Take(Readings.Count))
        {
            yield return fact;
            yield return fact;
        }
        foreach ((int hour, double ph) in Measurements)
            yield return async kitchen =>
            {
                PhMeasurement wrong = Measurement(hour, ph + 1);
                await kitchen.Jars.ObserveAsync([wrong], default);
                await kitchen.Jars.CorrectAsync(wrong.Id, End, "Mira", Measurement(hour, ph), default);
            };
        foreach (var move in Facts().Skip(Readings.Count + Measurements.Count))
            yield return move;
    }

    private static Reading Reading(int minute, double celsius) =>
        new(1, Quantity.Temperature, celsius, Packed + Duration.FromMinutes(minute), End, TimeSource.Payload);

    private static PhMeasurement Measurement(int hour, double ph) => new()
    {
        Id = Guid.NewGuid(), JarId = JarId, At = Packed + Duration.FromHours(hour), EnteredAt = End, By = "Mira", Ph = ph, Method = PhMethod.Meter,
            CheckedInBuffer = true,
    };
}
