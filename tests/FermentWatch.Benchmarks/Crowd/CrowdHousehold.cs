using FermentWatch.Intake.Credentials;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Benchmarks.Crowd;

/// <summary>An invented household with twenty jars on four shelves, ten sensors that behave, one that floods and one that comes back after a
/// month.</summary>
internal static class CrowdHousehold
{
    public const int WellBehaved = 10;
    private const int Shelves = 4;
    private const int Jars = 20;

    /// <summary>Writes it down. Returns each sensor with its password: those that behave, then the flooding, then the one with a month.</summary>
    public static async Task<IReadOnlyList<(Sensor Sensor, string Password)>> MakeAsync(string folder, Instant now)
    {
        await using ServiceProvider services = new ServiceCollection().AddLogging().AddSingleton(TimeProvider.System)
            .AddFermentWatchStorage(new StorageOptions { Folder = folder }).BuildServiceProvider();
        services.OpenStorage();
        Place[] places = [.. Enumerable.Range(1, Shelves)
            .Select(number => new Place { Id = Guid.CreateVersion7(), Name = $"shelf {number}", ShelfOrder = number,
            Typical = TypicalTemperature.Usual })];
        foreach (Place place in places)
            await services.GetRequiredService<IPlaceBook>().AddAsync(place, default);
        for (int i = 0; i < Jars; i++)
            await services.GetRequiredService<IJarBook>().AddAsync([Jar(places[i % Shelves], now - Duration.FromDays(1 + (i % 14)))], default);
        var sensors = new List<(Sensor, string)>();
        for (int i = 0; i < WellBehaved + 2; i++)
        {
            var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = $"crowd-{i}", Name = $"crowd {i}", AddedAt = now - Duration.FromDays(40) };
            IssuedCredential issued = new CredentialIssuer().ForSensor(sensor);
            Sensor added = await services.GetRequiredService<ISensorBook>().AddAsync(sensor, issued.Credential, default);
            await services.GetRequiredService<ISensorBook>().PlaceAsync(
                new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = added.Id, PlaceId = places[i % Shelves].Id, From = sensor.AddedAt },
                default);
            sensors.Add((added, issued.Password));
        }
        return sensors;
    }

    private static Jar Jar(Place place, Instant packedAt)
    {
        var jar = new Jar
        {
            Id = Guid.CreateVersion7(), Name = "cabbage", BatchId = Guid.CreateVersion7(), PackedAt = packedAt,
                Portions = [new Portion("cabbage", 0.8)],
            Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1, Cover = Cover.Leaf, Lid = Lid.Vented,
            Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = place.Id, From = jar.PackedAt });
        return jar;
    }
}
