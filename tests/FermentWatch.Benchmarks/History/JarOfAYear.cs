using System.Diagnostics;
using FermentWatch.Acts.Histories;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Benchmarks.History;

/// <summary>The temperatures of the picture of a jar of 350 days, as a ratio to reading the quarter hours of every sensor for it, which it
/// did before.</summary>
internal static class JarOfAYear
{
    private const int Rounds = 5;
    private const int PointsOfThePicture = 1500;

    public static async Task RunAsync(string folder, MinuteReadings readings)
    {
        if (readings.Days < 351)
            return;
        await using ServiceProvider services = HistoryHousehold.Services(folder);
        services.OpenStorage();
        IReadOnlyList<Place> places = await services.GetRequiredService<IPlaceBook>().AllAsync(default);
        Instant until = readings.From + Duration.FromDays(readings.Days), packed = until - Duration.FromDays(350);
        var jar = new Jar
        {
            Id = Guid.CreateVersion7(), Name = "cabbage", BatchId = Guid.CreateVersion7(), PackedAt = packed,
                Portions = [new Portion("cabbage", 0.8)],
            Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1, Cover = Cover.Leaf, Lid = Lid.Vented,
            Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = places[0].Id, From = packed });
        var sensors = services.GetRequiredService<ISensorBook>();
        var log = services.GetRequiredService<IReadingLog>();
        var reader = new HistoryReader(services.GetRequiredService<IReadingHistory>(), sensors);
        var span = new HistorySpan(Quantity.Temperature, packed, until, PointsOfThePicture);

        (double before, long beforeBytes) = await MeasureAsync(async () =>
            await TemperatureHistory.ReadAsync(log, await sensors.AllAsync(default), packed, until, default));
        (double now, long nowBytes) = await MeasureAsync(() => reader.OfJarAsync(jar, span, default));
        Console.WriteLine($"jar of 350 days: every sensor's quarter hours {before:F0} ms and {beforeBytes >> 20} MB allocated; its own history "
            + $"{now:F1} ms and {nowBytes / 1048576.0:F1} MB: {before / now:F0} times as fast, {beforeBytes / (double)nowBytes:F0} times less "
            + "memory");
    }

    private static async Task<(double Milliseconds, long Bytes)> MeasureAsync(Func<Task> read)
    {
        await read();
        long allocated = GC.GetTotalAllocatedBytes(precise: true);
        var watch = Stopwatch.StartNew();
        for (int round = 0; round < Rounds; round++)
            await read();
        return (watch.Elapsed.TotalMilliseconds / Rounds, (GC.GetTotalAllocatedBytes(precise: true) - allocated) / Rounds);
    }
}
