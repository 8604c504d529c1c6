using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Tests.Records.Books;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records;

/// <summary>
/// What the ports of the store promise of two that write at once, asked through the ports alone: with another store these are the tests
/// that it has to pass.
/// </summary>
public sealed class TwoProcessesTests : OpenedRecords
{
    private const int Tries = 20;

    private ServiceProvider _other = null!;

    private async Task<T[]> BothAsync<T, TBook>(Func<TBook, Task<T>> act) where TBook : notnull
    {
        var start = new TaskCompletionSource();
        Task<T>[] both =
        [
            .. new[] { Get<TBook>(), _other.GetRequiredService<TBook>() }.Select(book => Task.Run(async () =>
            {
                await start.Task;
                return await act(book);
            })),
        ];
        start.SetResult();
        return await Task.WhenAll(both);
    }

    private async Task WithTheOtherAsync(Func<Task> test)
    {
        await using (_other = Open())
            await test();
    }

    [Fact]
    public Task JarBookAdd_GivesEachNumberOnce() => WithTheOtherAsync(async () =>
    {
        Place place = await AddPlaceAsync();
        for (int i = 0; i < Tries; i++)
            await BothAsync<IReadOnlyList<Jar>, IJarBook>(book => book.AddAsync([JarBookTests.Jar(place), JarBookTests.Jar(place)], default));
        Assert.Equal(Enumerable.Range(1, 4 * Tries), (await Get<IJarBook>().AllAsync(default)).Select(jar => jar.Number).Order());
    });

    [Fact]
    public Task JarBookAdd_OfOneBatch_IsDoneOnceAndBothGetTheJarsOnRecord() => WithTheOtherAsync(async () =>
    {
        Place place = await AddPlaceAsync();
        for (int i = 0; i < Tries; i++)
        {
            Guid batch = Guid.CreateVersion7();
            IReadOnlyList<Jar>[] both = await BothAsync<IReadOnlyList<Jar>, IJarBook>(book =>
                book.AddAsync([JarBookTests.Jar(place, batch: batch), JarBookTests.Jar(place, batch: batch)], default));
            Assert.Equal([(2 * i) + 1, (2 * i) + 2], both[0].Select(jar => jar.Number));
            Assert.Equal(both[0].Select(jar => jar.Id), both[1].Select(jar => jar.Id));
        }
        Assert.Equal(2 * Tries, (await Get<IJarBook>().AllAsync(default)).Count);
    });

    [Fact]
    public Task PlaceBookAddFirst_ToAHouseholdThatHasNone_IsDoneByOne() => WithTheOtherAsync(async () =>
    {
        await BothAsync<bool, IPlaceBook>(async book =>
        {
            Place[] first = [.. new[] { "counter", "cellar" }.Select(name =>
                new Place { Id = Guid.CreateVersion7(), Name = name, Typical = TypicalTemperature.Usual })];
            await book.AddFirstAsync(first, default);
            return true;
        });
        Assert.Equal(["cellar", "counter"], (await Get<IPlaceBook>().AllAsync(default)).Select(place => place.Name).Order());
    });

    [Fact]
    public Task JarBookCorrect_OfOneEntry_IsDoneByOne() => WithTheOtherAsync(async () =>
    {
        Jar jar = (await Get<IJarBook>().AddAsync([JarBookTests.Jar(await AddPlaceAsync())], default))[0];
        for (int i = 0; i < Tries; i++)
        {
            var look = new Look { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Ada", Opened = false };
            await Get<IJarBook>().ObserveAsync([look], default);
            Assert.Equal([false, true], (await BothAsync<bool, IJarBook>(book => book.CorrectAsync(look.Id, Noon, "Ada", null, default))).Order());
        }
    });

    [Fact]
    public Task SensorBookAdd_GivesEachKeyOnce() => WithTheOtherAsync(async () =>
    {
        int made = 0;
        var keys = new List<int>();
        for (int i = 0; i < Tries; i++)
            keys.AddRange((await BothAsync<Sensor, ISensorBook>(book => book.AddAsync(
                new Sensor { Id = Guid.CreateVersion7(), Slug = $"sensor-{Interlocked.Increment(ref made)}", Name = "shelf", AddedAt = Noon }, null,
                default))).Select(sensor => sensor.Key));
        Assert.Equal(2 * Tries, keys.Distinct().Count());
    });

    [Fact]
    public Task NoticeBookClaim_GivesEachNoticeToOne() => WithTheOtherAsync(async () =>
    {
        await Get<INoticeBook>().QueueAsync([.. Enumerable.Range(0, 2 * Tries).Select(index => Notice($"{index}"))], default);
        var claimed = new List<string>();
        for (int i = 0; i < Tries; i++)
            claimed.AddRange((await BothAsync<IReadOnlyList<Notice>,
                INoticeBook>(book => book.ClaimAsync(Noon, Noon + Duration.FromMinutes(2), 1, default)))
                .SelectMany(each => each).Select(notice => notice.Key));
        Assert.Equal(Enumerable.Range(0, 2 * Tries).Select(index => $"{index}").Order(), claimed.Order());
    });

    [Fact]
    public Task NoticeBookQueue_OfOneKey_QueuesItOnce() => WithTheOtherAsync(async () =>
    {
        for (int i = 0; i < Tries; i++)
            await BothAsync<bool, INoticeBook>(async book =>
            {
                await book.QueueAsync([Notice($"{i}")], default);
                return true;
            });
        Assert.Equal(Tries, (await Get<INoticeBook>().LatestAsync(10 * Tries, default)).Count);
    });

    [Fact]
    public Task RoundBookOpen_OfOneDate_IsDoneByOneWithItsNotices() => WithTheOtherAsync(async () =>
    {
        for (int i = 0; i < Tries; i++)
        {
            LocalDate date = new LocalDate(2025, 10, 4).PlusDays(i);
            Assert.Equal([false, true], (await BothAsync<bool, IRoundBook>(book =>
                book.OpenAsync(new Round { Date = date, DueAt = Noon, OpenedAt = Noon, Missed = false }, [Notice($"{date} {Guid.NewGuid()}")],
                default))).Order());
        }
        Assert.Equal(Tries, (await Get<INoticeBook>().LatestAsync(10 * Tries, default)).Count);
    });

    [Fact]
    public Task OccasionBookTell_OfOneCause_IsDoneByOneWithItsNotices() => WithTheOtherAsync(async () =>
    {
        for (int i = 0; i < Tries; i++)
            Assert.Equal([false, true],
                (await BothAsync<bool, IOccasionBook>(book => book.TellAsync([Told($"{i}")], [Notice($"{i} {Guid.NewGuid()}")], default))).Order());
        Assert.Equal(Tries, (await Get<INoticeBook>().LatestAsync(10 * Tries, default)).Count);
    });

    private static Notice Notice(string key) => new()
    {
        Id = Guid.CreateVersion7(), Key = key, RouteId = Guid.CreateVersion7(), Person = "Ada", Title = "Two jars", Body = "Look at 3 and 4.",
        DueAt = Noon, ExpiresAt = Noon + Duration.FromDays(1), NextAttemptAt = Noon,
    };

    private static ToldOccasion Told(string key) => new()
    {
        Id = Guid.CreateVersion7(), Key = key, Kind = OccasionKind.TooWarm, Subject = Guid.Empty, Cause = "spell", ToldAt = Noon, LastSeenAt = Noon,
    };
}
