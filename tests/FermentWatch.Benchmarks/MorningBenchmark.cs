using System.Diagnostics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Benchmarks;

/// <summary>
/// A morning for 1,000 jars on twenty shelves and eight people, from the real store: what to look at, what has come up, and their
/// notices in the outbox. The reference is reading the same jars and forecasts once.
/// </summary>
internal static class MorningBenchmark
{
    private const int Jars = 1000;
    private const int Shelves = 20;
    private const int People = 8;
    private const int Mornings = 7;
    private static readonly Instant First = Instant.FromUtc(2026, 10, 12, 5, 0);

    public static async Task RunAsync()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-bench-");
        try
        {
            await using ServiceProvider services = Services(folder.FullName);
            services.OpenStorage();
            await FillAsync(services);
            await MeasureAsync(services);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    private static ServiceProvider Services(string folder) => new ServiceCollection().AddLogging()
        .AddSingleton<TimeProvider>(new FakeTimeProvider(First.ToDateTimeOffset()))
        .AddFermentWatchStorage(new StorageOptions { Folder = folder })
        .AddSingleton<IClock>(new FakeTimeProvider(First.ToDateTimeOffset()).ToClock()).AddSingleton<SetAside>()
        .AddSingleton<DryPlaces>().AddSingleton<RoundPass>().AddSingleton<ConcernReader>().AddSingleton<OccasionFactsReader>()
            .AddSingleton<OccasionPass>()
        .BuildServiceProvider();

    private static async Task MeasureAsync(ServiceProvider services)
    {
        RoundPass rounds = services.GetRequiredService<RoundPass>();
        OccasionPass occasions = services.GetRequiredService<OccasionPass>();
        await rounds.RunAsync(First - Duration.FromHours(1), default);
        var mornings = new List<double>();
        var readings = new List<double>();
        for (int day = 0; day < Mornings; day++)
        {
            Instant now = First + Duration.FromDays(day);
            int before = await CountAsync(services);
            (double Elapsed, double Processor) round = await TimeAsync(() => rounds.RunAsync(now, default)),
                told = await TimeAsync(() => occasions.RunAsync(now, default));
            (double Elapsed, double Processor) read = await TimeAsync(async () =>
            {
                await services.GetRequiredService<IJarBook>().KeptAsync(default);
                await services.GetRequiredService<IForecastBook>().LatestAsync(default);
            });
            Console.WriteLine($"morning {day + 1}: round {round.Elapsed:F0} ms (processor {round.Processor:F0}), occasions {told.Elapsed:F0} ms "
                + $"(processor {told.Processor:F0}), "
                + $"{await CountAsync(services) - before} notices; reading once {read.Elapsed:F0} ms (processor {read.Processor:F0})");
            mornings.Add(round.Elapsed + told.Elapsed);
            readings.Add(read.Elapsed);
        }
        double morning = Median(mornings), once = Median(readings);
        Console.WriteLine($"a morning for {Jars} jars decided and queued: median {morning:F0} ms, the first of the process {mornings[0]:F0} ms; "
            + $"{morning / once:F1} times reading them once");
    }

    private static async Task<int> CountAsync(ServiceProvider services) =>
        (await services.GetRequiredService<INoticeBook>().LatestAsync(int.MaxValue, default)).Count;

    private static async Task FillAsync(ServiceProvider services)
    {
        IHouseholdBook households = services.GetRequiredService<IHouseholdBook>();
        Household household = await households.ReadAsync(default);
        household.TimeZoneId = "Europe/Vienna";
        await households.WriteAsync(household, default);
        Place[] places = [.. Enumerable.Range(1, Shelves)
            .Select(number => new Place { Id = Guid.CreateVersion7(), Name = $"shelf {number}", ShelfOrder = number,
            Typical = TypicalTemperature.Usual })];
        foreach (Place place in places)
            await services.GetRequiredService<IPlaceBook>().AddAsync(place, default);
        foreach (int person in Enumerable.Range(1, People))
            await services.GetRequiredService<INoticeBook>().AddRouteAsync(
                new NoticeRoute { Id = Guid.CreateVersion7(), Person = $"person {person}", Channel = Channel.Webhook,
                Address = "http://127.0.0.1/" }, default);
        await FillRoomAsync(services, places[0]);
        IReadOnlyList<Jar> jars = await services.GetRequiredService<IJarBook>()
            .AddAsync([.. Enumerable.Range(0, Jars).Select(index => Jar(index, places[index % Shelves]))], default);
        await services.GetRequiredService<IJarBook>().ObserveAsync([.. jars.SelectMany(Looks)], default);
        var byId = places.ToDictionary(place => place.Id);
        JarForecast like = JarForecaster.Forecast(jars[0], byId, TemperatureHistory.Empty, First - Duration.FromMinutes(15), null, "");
        await services.GetRequiredService<IForecastBook>()
            .SaveAsync([.. jars.Select(jar => new RenewedForecast(like with { JarId = jar.Id, Origin = QuarterHour.Floor(jar.PackedAt) }, null))],
            default);
    }

    private static async Task FillRoomAsync(ServiceProvider services, Place place)
    {
        var room = new Sensor { Id = Guid.CreateVersion7(), Slug = "room", Name = "room", AddedAt = First - Duration.FromDays(60) };
        room.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = room.Id, PlaceId = place.Id, From = room.AddedAt });
        room = await services.GetRequiredService<ISensorBook>().AddAsync(room, null, default);
        var random = new Random(1);
        Instant[] times = [.. Enumerable.Range(0, 12 * 24 * (3 + Mornings))
            .Select(step => First - Duration.FromDays(3) + Duration.FromMinutes(5 * step))];
        await services.GetRequiredService<IReadingIntake>().AppendAsync(
            [.. times.Select(at => new Reading(room.Key, Quantity.Temperature, 20 + random.NextDouble(), at, at, TimeSource.Payload))], default);
        await new Kitchen.Judging.JudgingPass(services.GetRequiredService<IReadingLog>()).RunAsync(default);
    }

    private static Jar Jar(int index, Place place)
    {
        Instant packed = First - Duration.FromDays(1 + (index % 40)) + Duration.FromHours(10);
        var jar = new Jar
        {
            Id = Guid.CreateVersion7(), Number = 0, Name = "cabbage", BatchId = Guid.CreateVersion7(), PackedAt = packed,
            Portions = [new Portion("cabbage", 0.8)], Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25),
            VesselLitres = 1, Cover = Cover.Leaf, Lid = Lid.Vented, Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = place.Id, From = packed });
        return jar;
    }

    /// <summary>One look a day since it was packed, as a household that forgets nothing files them.</summary>
    private static IEnumerable<Observation> Looks(Jar jar)
    {
        for (Instant at = jar.PackedAt + Duration.FromDays(1); at < First - Duration.FromHours(2); at += Duration.FromDays(1))
            yield return new Look { Id = Guid.CreateVersion7(), JarId = jar.Id, At = at, EnteredAt = at, By = "person 1", Opened = false };
    }

    private static async Task<(double Elapsed, double Processor)> TimeAsync(Func<Task> what)
    {
        using var process = Process.GetCurrentProcess();
        (long start, TimeSpan processor) = (Stopwatch.GetTimestamp(), process.TotalProcessorTime);
        await what();
        process.Refresh();
        return (Stopwatch.GetElapsedTime(start).TotalMilliseconds, (process.TotalProcessorTime - processor).TotalMilliseconds);
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
