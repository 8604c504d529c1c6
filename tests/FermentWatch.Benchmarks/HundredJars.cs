using FermentWatch.Intake.Credentials;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Benchmarks;

/// <summary>An invented household of 100 jars, half of them cold for months, looked at daily and measured once each, with 20 sensors in 20
/// places.</summary>
internal static class HundredJars
{
    public const int Jars = 100;
    public const int Places = 20;
    private const int ColdForDays = 150;

    public static Reading Reading(int key, Instant at) =>
        new(key, Quantity.Temperature, (key % 2 == 0 ? 4 : 19) + (0.7 * Math.Sin(at.ToUnixTimeSeconds() / 13_750.0)) + (key * 0.01), at, at,
        TimeSource.Payload);

    /// <summary>Writes it down as of an instant. Returns each sensor with its password.</summary>
    public static async Task<IReadOnlyList<(Sensor Sensor, string Password)>> FillAsync(ServiceProvider services, Instant now)
    {
        Place[] places = [.. Enumerable.Range(1, Places).Select(number => new Place
        {
            Id = Guid.CreateVersion7(), Name = $"shelf {number}", ShelfOrder = number, Typical = number % 2 == 0 ? TypicalTemperature.ColdStore
                : TypicalTemperature.Usual,
        })];
        var sensors = new List<(Sensor, string)>();
        Instant began = now - Duration.FromDays(ColdForDays + 30);
        foreach (Place place in places)
        {
            await services.GetRequiredService<IPlaceBook>().AddAsync(place, default);
            var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = $"s{place.ShelfOrder}", Name = place.Name, AddedAt = began };
            sensor.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = place.Id, From = began });
            IssuedCredential issued = new CredentialIssuer().ForSensor(sensor);
            sensors.Add((await services.GetRequiredService<ISensorBook>().AddAsync(sensor, issued.Credential, default), issued.Password));
        }
        for (Instant day = began; day < now; day += Duration.FromDays(1))
            await services.GetRequiredService<IReadingIntake>().AppendAsync([.. Enumerable.Range(1, Places).SelectMany(key => Enumerable.Range(0, 96)
                .Select(step => Reading(key, day + (QuarterHour.Length * step)))).Where(reading => !IsSilent(reading, now))], default);
        await services.GetRequiredService<JudgingPass>().RunAsync(default);
        IReadOnlyList<Jar> jars = await services.GetRequiredService<IJarBook>()
            .AddAsync([.. Enumerable.Range(0, Jars).Select(index => Jar(index, places, now))], default);
        await services.GetRequiredService<IJarBook>().ObserveAsync([.. jars.SelectMany(jar => Seen(jar, now))], default);
        return sensors;
    }

    /// <summary>Every second sensor of the warm places said nothing for ten hours, three days ago.</summary>
    private static bool IsSilent(Reading reading, Instant now) => reading.SensorKey % 4 == 1
        && reading.MeasuredAt >= now - Duration.FromDays(3) && reading.MeasuredAt < now - Duration.FromDays(3) + Duration.FromHours(10);

    /// <summary>Every second jar went into the cold five months ago.</summary>
    private static Jar Jar(int index, Place[] places, Instant now)
    {
        bool cold = index % 2 == 1;
        Instant packed = now - Duration.FromDays(cold ? ColdForDays + 20 : 5 + (index % 25));
        var jar = new Jar
        {
            Id = Guid.CreateVersion7(), Name = "cabbage", BatchId = Guid.CreateVersion7(), PackedAt = packed,
                Portions = [new Portion("cabbage", 0.9)],
            Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1, Cover = Cover.Leaf, Lid = Lid.Vented,
            Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = places[index % Places / 2 * 2].Id,
            From = packed });
        if (cold)
            jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = places[(index % Places / 2 * 2) + 1].Id,
                From = packed + Duration.FromDays(20) });
        return jar;
    }

    private static IEnumerable<Observation> Seen(Jar jar, Instant now)
    {
        for (Instant at = jar.PackedAt + Duration.FromDays(1); at < now; at += Duration.FromDays(1))
            yield return new Look { Id = Guid.CreateVersion7(), JarId = jar.Id, At = at, EnteredAt = at, By = "Tilda", Opened = false };
        yield return Ph(jar, jar.PackedAt + Duration.FromDays(4), 3.9);
        if (jar.Placements.Count > 1)
            yield return new StageChange { Id = Guid.CreateVersion7(), JarId = jar.Id, At = jar.Placements[1].From,
                EnteredAt = jar.Placements[1].From, By = "Tilda", Stage = JarStage.Cold };
    }

    private static PhMeasurement Ph(Jar jar, Instant at, double ph) => new()
    {
        Id = Guid.CreateVersion7(), JarId = jar.Id, At = at, EnteredAt = at, By = "Tilda", Ph = ph, Method = PhMethod.Meter, CheckedInBuffer = true,
    };
}
