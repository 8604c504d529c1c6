using System.Diagnostics;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Benchmarks;

/// <summary>
/// What a quarter of an hour costs a household of 100 jars, half of them cold for months, with 20 sensors in 20 places, from the real
/// store: without news, with news of one place, of all, and after an entry. The reference is making every forecast anew.
/// </summary>
internal static class QuarterBenchmark
{
    private const int Jars = 100;
    private const int Places = 20;
    private const int ColdForDays = 150;
    private const int Quarters = 7;
    private const int Entries = 200;
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 1, 9, 0);

    public static async Task RunAsync()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-bench-");
        try
        {
            await using ServiceProvider services = Services(folder.FullName);
            services.OpenStorage();
            await FillAsync(services);
            await MeasureAsync(services, folder);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    private static ServiceProvider Services(string folder) => new ServiceCollection().AddLogging()
        .AddSingleton(TimeProvider.System).AddSingleton<IClock>(TimeProvider.System.ToClock())
        .AddFermentWatchStorage(new StorageOptions { Folder = folder })
        .AddSingleton<SetAside>().AddSingleton<ForecastPass>().AddSingleton<JudgingPass>()
        .BuildServiceProvider();

    private static async Task MeasureAsync(ServiceProvider services, DirectoryInfo folder)
    {
        ForecastPass pass = services.GetRequiredService<ForecastPass>();
        double full = 0;
        long stored = await WrittenAsync(folder, async () => full = await TimeAsync(() => pass.RunAsync(Now, default)));
        Console.WriteLine($"every forecast anew: {full:F0} ms, {stored / 1024.0 / Jars:F1} kB written a jar");

        double[] none = new double[Quarters], one = new double[Quarters], all = new double[Quarters];
        long written = 0;
        for (int quarter = 0; quarter < Quarters; quarter++)
        {
            Instant at = Now + (QuarterHour.Length * (3 * quarter));
            none[quarter] = await TimeAsync(() => pass.RunAsync(at + QuarterHour.Length, default));
            await ReportAsync(services, at + QuarterHour.Length, 1);
            one[quarter] = await TimeAsync(() => pass.RunAsync(at + (QuarterHour.Length * 2), default));
            await ReportAsync(services, at + (QuarterHour.Length * 2), Places);
            written += await WrittenAsync(folder, async () => all[quarter] = await TimeAsync(() => pass.RunAsync(at + (QuarterHour.Length * 3), default)));
        }
        Say("without news", none, full);
        Say("with news of one place", one, full);
        Say("with news of all places", all, full);
        Console.WriteLine($"written for a quarter hour with news of all places: {written / 1024.0 / Quarters:F0} kB");
        await EnterAsync(services, pass, Now + (QuarterHour.Length * 3 * Quarters));
    }

    private static async Task EnterAsync(ServiceProvider services, ForecastPass pass, Instant at)
    {
        IJarBook jars = services.GetRequiredService<IJarBook>();
        double[] times = new double[Entries];
        for (int entry = 0; entry < Entries; entry++)
        {
            int number = 1 + (entry % Jars);
            Jar jar = (await jars.FindAsync(number, default))!;
            times[entry] = await TimeAsync(async () =>
            {
                await jars.ObserveAsync([Ph(jar, at, 3.6)], default);
                await pass.RenewAsync([(await jars.FindAsync(number, default))!], at, default);
            });
        }
        Array.Sort(times);
        Console.WriteLine($"a pH entered and its jar's forecast renewed: p50 {times[Entries / 2]:F0} ms, p99 {times[(int)(Entries * 0.99)]:F0} ms");
    }

    private static async Task ReportAsync(ServiceProvider services, Instant quarter, int places)
    {
        await services.GetRequiredService<IReadingIntake>().AppendAsync([.. Enumerable.Range(1, places).SelectMany(key => Enumerable.Range(0, 15)
            .Select(minute => Reading(key, quarter + Duration.FromMinutes(minute))))], default);
        await services.GetRequiredService<JudgingPass>().RunAsync(default);
    }

    private static Reading Reading(int key, Instant at) =>
        new(key, Quantity.Temperature, (key % 2 == 0 ? 4 : 19) + (0.7 * Math.Sin(at.ToUnixTimeSeconds() / 13_750.0)) + (key * 0.01), at, at, TimeSource.Payload);

    private static async Task FillAsync(ServiceProvider services)
    {
        Place[] places = [.. Enumerable.Range(1, Places).Select(number => new Place
        {
            Id = Guid.CreateVersion7(), Name = $"shelf {number}", ShelfOrder = number, Typical = number % 2 == 0 ? TypicalTemperature.ColdStore : TypicalTemperature.Usual,
        })];
        Instant began = Now - Duration.FromDays(ColdForDays + 30);
        foreach (Place place in places)
        {
            await services.GetRequiredService<IPlaceBook>().AddAsync(place, default);
            var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = $"s{place.ShelfOrder}", Name = place.Name, AddedAt = began };
            sensor.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = place.Id, From = began });
            await services.GetRequiredService<ISensorBook>().AddAsync(sensor, null, default);
        }
        for (Instant day = began; day < Now; day += Duration.FromDays(1))
            await services.GetRequiredService<IReadingIntake>().AppendAsync([.. Enumerable.Range(1, Places).SelectMany(key => Enumerable.Range(0, 96)
                .Select(step => Reading(key, day + (QuarterHour.Length * step))))], default);
        await services.GetRequiredService<JudgingPass>().RunAsync(default);
        IReadOnlyList<Jar> jars = await services.GetRequiredService<IJarBook>().AddAsync([.. Enumerable.Range(0, Jars).Select(index => Jar(index, places))], default);
        await services.GetRequiredService<IJarBook>().ObserveAsync([.. jars.SelectMany(Seen)], default);
    }

    /// <summary>Every second jar went into the cold five months ago.</summary>
    private static Jar Jar(int index, Place[] places)
    {
        bool cold = index % 2 == 1;
        Instant packed = Now - Duration.FromDays(cold ? ColdForDays + 20 : 5 + (index % 25));
        var jar = new Jar
        {
            Id = Guid.CreateVersion7(), Name = "cabbage", BatchId = Guid.CreateVersion7(), PackedAt = packed, Portions = [new Portion("cabbage", 0.9)],
            Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1, Cover = Cover.Leaf, Lid = Lid.Vented, Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = places[index % Places / 2 * 2].Id, From = packed });
        if (cold)
            jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = places[(index % Places / 2 * 2) + 1].Id, From = packed + Duration.FromDays(20) });
        return jar;
    }

    private static IEnumerable<Observation> Seen(Jar jar)
    {
        for (Instant at = jar.PackedAt + Duration.FromDays(1); at < Now; at += Duration.FromDays(1))
            yield return new Look { Id = Guid.CreateVersion7(), JarId = jar.Id, At = at, EnteredAt = at, By = "Mira", Opened = false };
        yield return Ph(jar, jar.PackedAt + Duration.FromDays(4), 3.9);
        if (jar.Placements.Count > 1)
            yield return new StageChange { Id = Guid.CreateVersion7(), JarId = jar.Id, At = jar.Placements[1].From, EnteredAt = jar.Placements[1].From, By = "Mira", Stage = JarStage.Cold };
    }

    private static PhMeasurement Ph(Jar jar, Instant at, double ph) => new()
    {
        Id = Guid.CreateVersion7(), JarId = jar.Id, At = at, EnteredAt = at, By = "Mira", Ph = ph, Method = PhMethod.Meter, CheckedInBuffer = true,
    };

    private static void Say(string what, double[] times, double full)
    {
        double median = times.Order().ElementAt(times.Length / 2);
        Console.WriteLine($"a quarter hour {what}: median {median:F1} ms, 1/{full / median:F0} of making every forecast anew");
    }

    private static async Task<double> TimeAsync(Func<Task> work)
    {
        long start = Stopwatch.GetTimestamp();
        await work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    /// <summary>Bytes by which the records' file and journal grow, after both were brought together.</summary>
    private static async Task<long> WrittenAsync(DirectoryInfo folder, Func<Task> work)
    {
        string journal = Path.Combine(folder.FullName, "records.db-wal");
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(folder.FullName, "records.db")};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
            command.ExecuteNonQuery();
        }
        await work();
        return File.Exists(journal) ? new FileInfo(journal).Length : 0;
    }
}
