using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed partial class JarBookTests
{
    [Fact]
    public async Task KeptAsync_JarFinishedThenTakenBack_IsKeptAgain()
    {
        var jar = await AddAsync();
        var finished = new StageChange { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(9), EnteredAt = At(9), By = "Ada",
            Stage = JarStage.Finished };
        await Book.ObserveAsync([finished], default);
        Assert.Empty(await Book.KeptAsync(default));
        Assert.Equal(At(9), Assert.Single(await Book.AllAsync(default)).EndedAt);

        await Book.CorrectAsync(finished.Id, At(10), "Ada", null, default);
        Assert.Null(Assert.Single(await Book.KeptAsync(default)).EndedAt);
    }

    [Fact]
    public async Task EndedLastAsync_SomeEnded_GivesThoseThatEndedLastWholeByNumber()
    {
        var place = await AddPlaceAsync();
        IReadOnlyList<Jar> jars = await Book.AddAsync([Jar(place), Jar(place), Jar(place), Jar(place)], default);
        Observation Ended(Jar jar, int day, JarStage stage) =>
            new StageChange { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(day), EnteredAt = At(day), By = "Ada", Stage = stage };
        await Book.ObserveAsync([Ended(jars[0], 9, JarStage.Finished), Ended(jars[1], 5, JarStage.ThrownOut), Ended(jars[2], 7, JarStage.Finished),
            Ended(jars[3], 8, JarStage.Cold)], default);
        IReadOnlyList<Jar> ended = await Book.EndedLastAsync(2, default);
        Assert.Equal([1, 3], ended.Select(jar => jar.Number));
        Assert.All(ended, jar => Assert.Single(jar.Observations));
        Assert.Same(ended, await Book.EndedLastAsync(2, default));
    }

    [Fact]
    public async Task KeptAsync_WhileAnotherWrites_ReadsWhatWasBefore()
    {
        await AddAsync();
        using var other = new SqliteConnection($"Data Source={DatabasePath};Pooling=False");
        other.Open();
        using var transaction = other.BeginTransaction(deferred: false);
        using var change = new SqliteCommand("UPDATE jar SET Name = 'unsaved'", other, transaction);
        change.ExecuteNonQuery();
        Assert.Equal("cabbage", Assert.Single(await Book.KeptAsync(default)).Name);
    }

    [Fact]
    public async Task KeptAsync_AfterAnEntryOfOneJar_ReadsThatOneAndNoOther()
    {
        Place shelf = await AddPlaceAsync();
        IReadOnlyList<Jar> added = await Book.AddAsync([Jar(shelf), Jar(shelf), Jar(shelf)], default);
        Jar second = added[1];
        IReadOnlyList<Jar> before = await Book.KeptAsync(default);
        await Book.ObserveAsync([LookAt(second)], default);

        IReadOnlyList<Jar> after = await Book.KeptAsync(default);
        Assert.Equal(added.Select(jar => jar.Id), after.Select(jar => jar.Id));
        Assert.Same(before[0], after[0]);
        Assert.Single(after[1].Observations);
        Assert.Empty(before[1].Observations);
        Assert.Same(before[2], after[2]);
    }

    /// <summary>Whatever is done to whichever jar, the lists of kept and of ended jars are those of a book that reads everything.</summary>
    [Fact]
    public async Task KeptAndEnded_AfterAnyChangeOfAnyJar_AreThoseOfABookThatReadsEverything()
    {
        Place shelf = await AddPlaceAsync(), cellar = await AddPlaceAsync("cellar");
        var jars = new List<Jar>(await Book.AddAsync([Jar(shelf), Jar(shelf), Jar(shelf)], default));
        var random = new Random(7);
        var ended = new Dictionary<int, Guid>();
        for (int step = 0; step < 60; step++)
        {
            await Book.KeptAsync(default);
            await Book.EndedLastAsync(2, default);
            Jar jar = (await Book.FindAsync(random.Next(1, jars.Count + 1), default))!;
            switch (random.Next(6))
            {
                case 0:
                    await Book.ObserveAsync([LookAt(jar)], default);
                    break;
                case 1:
                    await Book.MoveAsync(
                        new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = cellar.Id, From = Noon + Duration.FromHours(step) },
                        default);
                    break;
                case 2 when jar.Standing.OfType<Look>().FirstOrDefault() is { } look:
                    await Book.CorrectAsync(look.Id, Noon, "Mira", LookAt(jar), default);
                    break;
                case 3 when !ended.ContainsKey(jar.Number):
                    var end = new StageChange { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon + Duration.FromDays(3), EnteredAt = Noon,
                        By = "Mira", Stage = JarStage.Finished };
                    await Book.ObserveAsync([end], default);
                    ended.Add(jar.Number, end.Id);
                    break;
                case 4 when ended.Remove(jar.Number, out Guid change):
                    await Book.CorrectAsync(change, Noon, "Mira", null, default);
                    break;
                case 5:
                    jars.AddRange(await Book.AddAsync([Jar(shelf)], default));
                    break;
            }
            IReadOnlyList<Jar> all = await Book.AllAsync(default);
            Assert.Equal(Told(all.Where(each => each.EndedAt is null)), Told(await Book.KeptAsync(default)));
            Assert.Equal(Told(all.Where(each => each.EndedAt is not null).TakeLast(2)), Told(await Book.EndedLastAsync(2, default)));
        }
        Assert.Contains(await Book.AllAsync(default), each => each.EndedAt is not null);
    }

    private static Look LookAt(Jar jar) =>
        new() { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Mira", Opened = false };

    private static string Told(IEnumerable<Jar> jars) => System.Text.Json.JsonSerializer.Serialize(jars.Select(jar => new
    {
        jar.Number, jar.Name, Placed = jar.Placements.Select(each => each.Id),
            Seen = jar.Observations.Select(each => (each.Id, each.VoidedAt).ToString()),
        Corrected = jar.Corrections.Select(each => each.Id),
    }));

    [Fact]
    public async Task KeptAsync_AskedAgain_IsReadAnewOnceAFactChangedByWhomeverItWas()
    {
        var jar = await AddAsync();
        IReadOnlyList<Jar> kept = await Book.KeptAsync(default);
        Assert.Same(kept, await Book.KeptAsync(default));

        await Book.ObserveAsync([Ph(jar, 2, 3.9)], default);
        Assert.Single(Assert.Single(await Book.KeptAsync(default)).Observations);

        // As a command line beside the running service would.
        await using (RecordsContext context = Context())
        {
            context.Add(Ph(jar, 3, 3.8));
            await context.SaveChangesAsync();
        }
        Assert.Equal(2, Assert.Single(await Book.KeptAsync(default)).Observations.Count);
    }
}
