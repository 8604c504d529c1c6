using System.Security.Cryptography;
using FermentWatch.Benchmarks.History;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Storage;
using FermentWatch.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Benchmarks.Archives;

/// <summary>
/// An invented household of 150 jars over three years, looked at 40 times each, every fourth time with a photo, exported, imported elsewhere and
/// exported again.
/// </summary>
internal static class ArchiveBenchmark
{
    private const int Jars = 150, Looks = 40, LooksToAPhoto = 4, PhotoBytes = 90_000;

    public static async Task RunAsync(int sensors, int days)
    {
        using var folder = new TemporaryFolder();
        string first = Path.Combine(folder.Path, "first"), second = Path.Combine(folder.Path, "second");
        string before = Path.Combine(folder.Path, "before.zip"), after = Path.Combine(folder.Path, "after.zip");
        var readings = new MinuteReadings(sensors, days);
        await HistoryHousehold.MakeAsync(Directory.CreateDirectory(first).FullName, readings);
        await FillAsync(first, readings.From);
        Verb export = await Verb.RunAsync(first, "export", "--to", before, "--readings");
        Verb import = await Verb.RunAsync(second, "import", before);
        Verb again = await Verb.RunAsync(second, "export", "--to", after, "--readings");
        Console.WriteLine($"{Jars} jars, {Jars * Looks:N0} observations, {Jars * Looks / LooksToAPhoto:N0} photos, {readings.Count:N0} readings: "
            + $"{new FileInfo(before).Length >> 20:N0} MB");
        Console.WriteLine($"exported: {export}");
        Console.WriteLine($"imported elsewhere: {import}");
        Console.WriteLine($"exported again: {again}; {(await SameAsync(before, after) ? "the same to the last byte" : "OTHER THAN BEFORE")}");
    }

    private static async Task FillAsync(string folder, Instant from)
    {
        await using ServiceProvider services = HistoryHousehold.Services(folder);
        services.OpenStorage();
        Place place = (await services.GetRequiredService<IPlaceBook>().AllAsync(default))[0];
        var book = services.GetRequiredService<IJarBook>();
        var random = new Random(150);
        for (int number = 0; number < Jars; number++)
        {
            Instant packed = from + Duration.FromDays(number * 7);
            Jar jar = (await book.AddAsync([JarOf(place, packed)], default))[0];
            Observation[] seen = [.. Enumerable.Range(0, Looks).Select(day => new Look
            {
                Id = Guid.CreateVersion7(), JarId = jar.Id, At = packed + Duration.FromDays(day), EnteredAt = packed + Duration.FromDays(day),
                    By = "Robin",
                Note = day % 9 == 0 ? "cloudy, as it should be" : null, Opened = day % 5 == 0,
            })];
            await book.ObserveAsync(seen, default);
            foreach (Observation each in seen.Where((_, day) => day % LooksToAPhoto == 0))
            {
                byte[] picture = new byte[PhotoBytes];
                random.NextBytes(picture);
                await services.GetRequiredService<IPhotoBook>().KeepAsync(
                    new Photo { ObservationId = each.Id, Jpeg = picture, By = "Robin" }, mayReplaceAny: true, default);
            }
        }
    }

    private static Jar JarOf(Place place, Instant packed)
    {
        var jar = new Jar
        {
            Id = Guid.CreateVersion7(), Name = "cabbage", BatchId = Guid.CreateVersion7(), PackedAt = packed,
                Portions = [new Portion("cabbage", 1.9)],
            Cut = Cut.Shredded, AddedWaterKilograms = 0, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 2, Cover = Cover.Leaf,
            Lid = Lid.Vented, Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = place.Id, From = packed });
        return jar;
    }

    private static async Task<bool> SameAsync(string first, string second)
    {
        await using FileStream one = File.OpenRead(first), other = File.OpenRead(second);
        byte[] ofOne = await SHA256.HashDataAsync(one), ofOther = await SHA256.HashDataAsync(other);
        return ofOne.SequenceEqual(ofOther);
    }
}
