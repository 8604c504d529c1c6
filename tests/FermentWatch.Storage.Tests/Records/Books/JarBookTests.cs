using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using NodaTime;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed partial class JarBookTests : OpenedRecords
{
    private IJarBook Book => Get<IJarBook>();

    [Fact]
    public async Task OfBatchAsync_GivesJarsOfThatBatchAlone_AlsoThoseThatEnded()
    {
        Place place = await AddPlaceAsync();
        Guid batch = Guid.CreateVersion7();
        IReadOnlyList<Jar> two = await Book.AddAsync([Jar(place, batch: batch), Jar(place, batch: batch)], default);
        await Book.AddAsync([Jar(place)], default);
        await Book.ObserveAsync([new StageChange
        {
            Id = Guid.CreateVersion7(), JarId = two[0].Id, At = Noon, EnteredAt = Noon, By = "Ada", Stage = JarStage.Finished,
        }], default);
        Assert.Equal([1, 2], (await Book.OfBatchAsync(batch, default)).Select(jar => jar.Number));
        Assert.Empty(await Book.OfBatchAsync(Guid.CreateVersion7(), default));
    }

    [Fact]
    public async Task AddAsync_SeveralAlike_GetTheNextNumbersAndComeBackWhole()
    {
        var place = await AddPlaceAsync();
        var first = Jar(place);
        Assert.Equal([1, 2], (await Book.AddAsync([first, Jar(place)], default)).Select(jar => jar.Number));
        Assert.Equal([3], (await Book.AddAsync([Jar(place)], default)).Select(jar => jar.Number));

        var read = (await Book.FindAsync(1, default))!;
        Assert.Equal(first.Portions, read.Portions);
        Assert.Equal((first.Id, first.BatchId, first.Name), (read.Id, read.BatchId, read.Name));
        Assert.Equal((first.Salting, first.Cut, first.AddedWaterKilograms), (read.Salting, read.Cut, read.AddedWaterKilograms));
        Assert.Equal((first.PackedAt, first.VesselLitres, first.Cover, first.Lid, first.Target),
            (read.PackedAt, read.VesselLitres, read.Cover, read.Lid, read.Target));
        Assert.Equal(place.Id, read.PlacementAt(Noon).PlaceId);
        Assert.Null(await Book.FindAsync(4, default));
    }

    [Fact]
    public async Task AddAsync_SaltedByTaste_HasNoPercent()
    {
        var jar = await AddAsync(new Salting(SaltKnowledge.ByTaste, null));
        Assert.Equal(new Salting(SaltKnowledge.ByTaste, null), jar.Salting);
    }

    [Fact]
    public async Task MoveAsync_ToAnotherPlace_IsDated()
    {
        var jar = await AddAsync();
        var cellar = await AddPlaceAsync("cellar");
        await Book.MoveAsync(
            new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = cellar.Id, From = Noon + Duration.FromDays(2) }, default);

        var read = Assert.Single(await Book.KeptAsync(default));
        Assert.NotEqual(cellar.Id, read.PlacementAt(Noon + Duration.FromDays(1)).PlaceId);
        Assert.Equal(cellar.Id, read.PlacementAt(Noon + Duration.FromDays(2)).PlaceId);
    }

    [Fact]
    public async Task PutRightAsync_RecipeAndFirstPlace_ChangeInOneStepAndWhatStoodBeforeIsKept()
    {
        var jar = await AddAsync();
        var cellar = await AddPlaceAsync("cellar");
        var right = Jar(cellar, id: jar.Id);
        right.Portions = [new Portion("red cabbage", 0.9)];
        right.Salting = new Salting(SaltKnowledge.ByTaste, null);
        right.Starter = new Starter(3, 0.06, 1.25);
        right.Vinegar = new Vinegar(0.06, 5);
        var correction = new JarCorrection { Id = Guid.CreateVersion7(), JarId = jar.Id, Field = "vegetables", Before = "cabbage",
            After = "red cabbage", EnteredAt = At(1), By = "Ada" };
        await Book.PutRightAsync(right, [correction], default);

        var read = (await Book.FindAsync(jar.Number, default))!;
        Assert.Equal(right.Portions, read.Portions);
        Assert.Equal((new Starter(3, 0.06, 1.25), new Vinegar(0.06, 5)), (read.Starter!, read.Vinegar!));
        Assert.Equal((right.Salting, cellar.Id), (read.Salting, Assert.Single(read.Placements).PlaceId));
        Assert.Equal((jar.BatchId, "cabbage", "red cabbage", "Ada"),
            (read.BatchId, Assert.Single(read.Corrections).Before, read.Corrections[0].After, read.Corrections[0].By));
    }

    [Fact]
    public async Task TakeBackMoveAsync_Once_StandsWhereItStoodAndIsOnRecord()
    {
        var jar = await AddAsync();
        var cellar = await AddPlaceAsync("cellar");
        var move = new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = cellar.Id, From = At(2) };
        await Book.MoveAsync(move, default);
        await Book.MoveAsync(move, default);
        var correction = new JarCorrection { Id = Guid.CreateVersion7(), JarId = jar.Id, Field = "place", Before = "cellar", After = "kitchen",
            Since = At(2), EnteredAt = At(3), By = "Ada" };
        Assert.True(await Book.TakeBackMoveAsync(move.Id, correction, default));
        Assert.False(await Book.TakeBackMoveAsync(move.Id, correction, default));

        var read = (await Book.FindAsync(jar.Number, default))!;
        Assert.Equal(jar.Placements[0].PlaceId, read.PlacementAt(At(4)).PlaceId);
        Assert.Equal(At(2), Assert.Single(read.Corrections).Since);
    }

    [Fact]
    public async Task ObserveAsync_EveryKind_IsReadBackAsItWas()
    {
        var jar = await AddAsync();
        Observation[] seen =
        [
            new Look { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Ada", Opened = true, Note = "fizz" },
            Ph(jar, 1, 4.25),
            new PhMeasurement { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(1.5), EnteredAt = At(2), By = "Ada", Ph = 3.9,
            Method = PhMethod.Meter, CheckedInBuffer = true, SampleCelsius = 21.5 },
            new Titration { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(1.6), EnteredAt = At(2), By = "Ada", PercentLactic = 1.2,
            BaseMillilitres = 13.3, BaseNormality = 0.1, SampleMillilitres = 10 },
            new Sighting { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(2), EnteredAt = At(3), By = "Ada", Kind = SightingKind.BrineLow },
            new StageChange { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(3), EnteredAt = At(3), By = "Ada", Stage = JarStage.Cold },
            new Taste { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(4), EnteredAt = At(4), By = "Ada", Verdict = TasteVerdict.Nearly },
            new JarOpened { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(5), EnteredAt = At(5), By = "Ada", Note = "for Sunday" },
            new PortionTaken { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(6), EnteredAt = At(6), By = "Ada", Fraction = 0.25 },
            new PortionTaken { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(7), EnteredAt = At(7), By = "Ada", Litres = 0.25 },
            new PortionTaken { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(8), EnteredAt = At(8), By = "Ada", Kilograms = 0.2 },
            new StageChange { Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(9), EnteredAt = At(9), By = "Ada", Stage = JarStage.Finished,
            Went = Destination.GivenAway, GivenTo = "the choir" },
        ];
        await Book.ObserveAsync(seen, default);

        var read = (await Book.FindAsync(1, default))!;
        Assert.Equivalent(seen, read.Standing.ToArray(), strict: true);
        Assert.Equal(seen.Select(each => each.GetType()), read.Standing.Select(each => each.GetType()));
        Assert.Equal(JarStage.Finished, read.Stage);
    }

    [Fact]
    public async Task ObserveAsync_SameIdAgain_CountsOnce()
    {
        var jar = await AddAsync();
        var measured = Ph(jar, 1, 4.25);
        await Book.ObserveAsync([measured], default);
        long revision = await RevisionAsync();
        await Book.ObserveAsync([measured], default);
        Assert.Single((await Book.FindAsync(1, default))!.Observations);
        Assert.Equal(revision, await RevisionAsync());
    }

    [Fact]
    public async Task CorrectAsync_Measurement_TakesItBackAndAddsTheOther()
    {
        var jar = await AddAsync();
        var wrong = Ph(jar, 1, 2.45);
        await Book.ObserveAsync([wrong], default);
        Assert.True(await Book.CorrectAsync(wrong.Id, At(2), "Ada", Ph(jar, 1, 4.25), default));

        var read = (await Book.FindAsync(1, default))!;
        Assert.Equal(4.25, Assert.IsType<PhMeasurement>(Assert.Single(read.Standing)).Ph);
        var voided = Assert.Single(read.Observations, each => each.Id == wrong.Id);
        Assert.Equal((At(2), "Ada"), (voided.VoidedAt!.Value, voided.VoidedBy));
    }

    [Fact]
    public async Task CorrectAsync_TakenBackBefore_SaysSoAndAddsNothing()
    {
        var jar = await AddAsync();
        var wrong = Ph(jar, 1, 2.45);
        await Book.ObserveAsync([wrong], default);
        Assert.True(await Book.CorrectAsync(wrong.Id, At(2), "Ada", null, default));
        Assert.False(await Book.CorrectAsync(wrong.Id, At(3), "Ben", Ph(jar, 1, 4.25), default));
        Assert.Equal("Ada", Assert.Single((await Book.FindAsync(1, default))!.Observations).VoidedBy);
    }

    private static Instant At(double days) => Noon + Duration.FromDays(days);

    private static PhMeasurement Ph(Jar jar, int day, double ph) => new()
    {
        Id = Guid.CreateVersion7(), JarId = jar.Id, At = At(day), EnteredAt = At(day), By = "Ada", Ph = ph, Method = PhMethod.Strip, PaleBrine = true,
    };

    internal static Jar Jar(Place place, Salting? salting = null, Guid? id = null, Guid? batch = null)
    {
        var jar = new Jar
        {
            Id = id ?? Guid.CreateVersion7(), Name = "cabbage", BatchId = batch ?? Guid.CreateVersion7(), PackedAt = Noon,
            Portions = [new Portion("cabbage", 1.9), new Portion("caraway", 0.1 + 0.2)], Cut = Cut.Shredded, AddedWaterKilograms = 0.25,
            Salting = salting ?? new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 2, Cover = Cover.Leaf, Lid = Lid.Vented,
            Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.CreateVersion7(), JarId = jar.Id, PlaceId = place.Id, From = Noon });
        return jar;
    }

    private async Task<Jar> AddAsync(Salting? salting = null) =>
        Assert.Single(await Book.AddAsync([Jar(await AddPlaceAsync(), salting)], default));
}
