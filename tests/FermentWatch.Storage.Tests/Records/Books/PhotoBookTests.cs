using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class PhotoBookTests : OpenedRecords
{
    private IPhotoBook Photos => Get<IPhotoBook>();

    [Fact]
    public async Task Keep_NewOneCannotBeWritten_LeavesTheOldOne()
    {
        Guid seen = await SeenAsync();
        Assert.Equal(PhotoKept.Kept, await Photos.KeepAsync(Of(seen, 1, "Lena"), false, default));
        TemporaryFolder.Sql(DatabasePath,
            "CREATE TRIGGER full_disk BEFORE INSERT ON photo BEGIN SELECT RAISE(ABORT, 'database or disk is full'); END");

        await Assert.ThrowsAsync<DbUpdateException>(() => Photos.KeepAsync(Of(seen, 2, "Lena"), false, default));
        Assert.Equal(1, (await Photos.FindAsync(seen, default))!.Jpeg.Single());
    }

    [Fact]
    public async Task Keep_InThePlaceOfSomebodyElses_IsForWhoMayReplaceAny()
    {
        Guid seen = await SeenAsync();
        await Photos.KeepAsync(Of(seen, 1, "Lena"), false, default);
        Assert.Equal(PhotoKept.SomebodyElses, await Photos.KeepAsync(Of(seen, 2, "Tom"), false, default));
        Assert.Equal(PhotoKept.Kept, await Photos.KeepAsync(Of(seen, 3, "Lena"), false, default));
        Assert.Equal(PhotoKept.Kept, await Photos.KeepAsync(Of(seen, 4, "Ada"), true, default));
        Assert.Equal(PhotoKept.SomebodyElses, await Photos.KeepAsync(Of(seen, 5, "Lena"), false, default));
        Assert.Equal(4, (await Photos.FindAsync(seen, default))!.Jpeg.Single());
        Assert.Equal(PhotoKept.NothingSeen, await Photos.KeepAsync(Of(Guid.NewGuid(), 1, "Ada"), true, default));
    }

    [Fact]
    public async Task Keep_InThePlaceOfOneByTheSameNameButAnotherAccount_IsSomebodyElses()
    {
        Guid seen = await SeenAsync();
        await Photos.KeepAsync(Of(seen, 1, "Lena"), false, default);
        var another = new Photo { ObservationId = seen, Jpeg = [2], By = "Lena", ById = Guid.NewGuid() };
        var unknown = new Photo { ObservationId = seen, Jpeg = [3], By = "Lena" };
        Assert.Equal(PhotoKept.SomebodyElses, await Photos.KeepAsync(another, false, default));
        Assert.Equal(PhotoKept.SomebodyElses, await Photos.KeepAsync(unknown, false, default));
        Assert.Equal(1, (await Photos.FindAsync(seen, default))!.Jpeg.Single());
    }

    [Fact]
    public async Task Newest_OfAJarWithThree_IsTheLastThatStands()
    {
        Assert.Empty(await Photos.NewestAsync(default));
        Guid first = await SeenAsync();
        Guid jar = Assert.Single(await Get<IJarBook>().KeptAsync(default)).Id;
        Guid second = await SeenAgainAsync(jar, 1), third = await SeenAgainAsync(jar, 2);
        foreach (Guid seen in new[] { third, first, second })
            await Photos.KeepAsync(Of(seen, 1, "Lena"), false, default);
        Assert.Equal(third, (await Photos.NewestAsync(default))[jar]);

        Assert.True(await Get<IJarBook>().CorrectAsync(third, Noon, "Lena", null, default));
        Assert.Equal(second, Assert.Single(await Photos.NewestAsync(default)).Value);
    }

    private async Task<Guid> SeenAgainAsync(Guid jar, int daysLater)
    {
        Instant at = Noon + Duration.FromDays(daysLater);
        var seen = new Sighting { Id = Guid.CreateVersion7(), JarId = jar, At = at, EnteredAt = at, By = "Lena", Kind = SightingKind.Film };
        await Get<IJarBook>().ObserveAsync([seen], default);
        return seen.Id;
    }

    /// <summary>By somebody whose account is named by the name.</summary>
    private static Photo Of(Guid observation, byte content, string by) =>
        new() { ObservationId = observation, Jpeg = [content], By = by, ById = AnswerId.Named(by) };

    private async Task<Guid> SeenAsync()
    {
        var place = new Place { Id = Guid.CreateVersion7(), Name = "cellar", ShelfOrder = 1, Typical = TypicalTemperature.Cellar };
        await Get<IPlaceBook>().AddAsync(place, default);
        Jar jar = Assert.Single(await Get<IJarBook>().AddAsync([JarBookTests.Jar(place)], default));
        var seen = new Sighting { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Lena", Kind = SightingKind.Film };
        await Get<IJarBook>().ObserveAsync([seen], default);
        return seen.Id;
    }
}
