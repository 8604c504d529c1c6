using FermentWatch.Kitchen.Places;
using FermentWatch.Storage.Records;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class PlaceBookTests : OpenedRecords
{
    [Fact]
    public async Task AllAsync_SeveralPlaces_ByShelfOrderThenName()
    {
        await AddPlaceAsync("cellar", 2);
        await AddPlaceAsync("window", 1);
        await AddPlaceAsync("counter", 1);
        Assert.Equal(["counter", "window", "cellar"], (await Get<IPlaceBook>().AllAsync(default)).Select(place => place.Name));
    }

    [Fact]
    public async Task ChangeAsync_EveryField_IsReadBack()
    {
        var place = await AddPlaceAsync();
        (place.Name, place.ShelfOrder, place.Typical) = ("Cellar", 7, TypicalTemperature.Cellar);
        await Get<IPlaceBook>().ChangeAsync(place, default);
        Assert.Equivalent(place, Assert.Single(await Get<IPlaceBook>().AllAsync(default)), strict: true);
    }

    [Theory]
    [InlineData("shelf")]
    [InlineData("Shelf")]
    public async Task AddAsync_NameThatIsTaken_SaysSoAndWritesNothing(string name)
    {
        await AddPlaceAsync("shelf");
        long revision = await RevisionAsync();
        var taken = await Assert.ThrowsAsync<NameTakenException>(() => AddPlaceAsync(name));
        Assert.Equal($"There is a place '{name}' already. Enter another name.", taken.Message);
        Assert.Single(await Get<IPlaceBook>().AllAsync(default));
        Assert.Equal(revision, await RevisionAsync());
    }

    [Fact]
    public async Task ChangeAsync_NameOfAnother_SaysSo()
    {
        await AddPlaceAsync("shelf");
        var place = await AddPlaceAsync("cellar");
        place.Name = "shelf";
        await Assert.ThrowsAsync<NameTakenException>(() => Get<IPlaceBook>().ChangeAsync(place, default));
    }
}
