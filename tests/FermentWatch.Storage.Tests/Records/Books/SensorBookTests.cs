using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Records;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class SensorBookTests : OpenedRecords
{
    private ISensorBook Book => Get<ISensorBook>();

    [Fact]
    public async Task AddAsync_Sensors_GetKeysThatAreNeverUsedAgain()
    {
        Assert.Equal(1, (await AddSensorAsync("shelf")).Key);
        var second = await AddSensorAsync("cellar");
        Assert.Equal(2, second.Key);
        await Book.RemoveAsync(second.Id, Noon, default);
        Assert.Equal(3, (await AddSensorAsync("cellar")).Key);
        Assert.Equal([1, 2, 3], (await Book.AllAsync(default)).Select(sensor => sensor.Key));
    }

    [Fact]
    public async Task AddAsync_ManyAtOnce_EachGetsAKeyOfItsOwn()
    {
        var sensors = await Task.WhenAll(Enumerable.Range(0, 16).Select(index => Task.Run(() => AddSensorAsync($"sensor-{index}"))));
        Assert.Equal(Enumerable.Range(1, 16), sensors.Select(sensor => sensor.Key).Order());
    }

    [Fact]
    public async Task FindAsync_PlacedTwice_ComesWithItsPlacements()
    {
        var shelf = await AddPlaceAsync("shelf");
        var cellar = await AddPlaceAsync("cellar");
        var sensor = await AddSensorAsync("one", shelf.Id);
        await Book.PlaceAsync(
            new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = cellar.Id, From = Noon + Duration.FromDays(1) },
            default);

        var found = await Book.FindAsync("one", default);
        Assert.Equal([shelf.Id, cellar.Id], found!.Placements.Select(placement => placement.PlaceId!.Value));
        Assert.Equal(cellar.Id, found.PlacementAt(Noon + Duration.FromDays(2))!.PlaceId);
        Assert.Null(await Book.FindAsync("two", default));
    }

    [Fact]
    public async Task RemoveAsync_Sensor_LosesItsCredentialAndStaysInTheRecord()
    {
        var sensor = await AddSensorAsync("one");
        Assert.Equal(sensor.Id, (await Book.CredentialAsync("one", default))!.SensorId);
        await Book.RemoveAsync(sensor.Id, Noon, default);

        Assert.Null(await Book.CredentialAsync("one", default));
        Assert.Null(await Book.FindAsync("one", default));
        Assert.Equal(Noon, Assert.Single(await Book.AllAsync(default)).RemovedAt);
    }

    [Fact]
    public async Task RenewCredentialAsync_Sensor_HasTheNewOneAndNoOther()
    {
        Sensor sensor = await AddSensorAsync("one");
        MqttCredential before = (await Book.CredentialAsync("one", default))!;
        await Book.RenewCredentialAsync(Credential("one", sensor.Id), default);

        MqttCredential after = (await Book.CredentialAsync("one", default))!;
        Assert.NotEqual(before.Id, after.Id);
        Assert.Equal(sensor.Id, after.SensorId);
    }

    [Fact]
    public async Task RenameAsync_Sensor_KeepsItsSlug()
    {
        Sensor sensor = await AddSensorAsync("one");
        await Book.RenameAsync(sensor.Id, "Küche", default);
        Assert.Equal("Küche", (await Book.FindAsync("one", default))!.Name);
    }

    [Fact]
    public async Task AddAsync_SlugInService_SaysSoAndAddsNoCredential()
    {
        await AddSensorAsync("one");
        var taken = await Assert.ThrowsAsync<NameTakenException>(() => Book.AddAsync(
            new Sensor { Id = Guid.CreateVersion7(), Slug = "one", Name = "other", AddedAt = Noon }, Credential("other-user", null), default));
        Assert.Equal("There is a sensor 'one' already. Enter another name.", taken.Message);
        Assert.Null(await Book.CredentialAsync("other-user", default));
    }

    [Fact]
    public async Task RemoveGatewayAsync_GatewayAndSensor_DeletesTheGatewaysCredentialOnly()
    {
        await AddSensorAsync("cellar");
        await Book.AddGatewayAsync(Credential("hub", null), default);
        Assert.False(await Book.RemoveGatewayAsync("cellar", default));
        Assert.NotNull(await Book.CredentialAsync("cellar", default));
        Assert.True(await Book.RemoveGatewayAsync("hub", default));
        Assert.False(await Book.RemoveGatewayAsync("hub", default));
        Assert.Null(await Book.CredentialAsync("hub", default));
    }

    [Fact]
    public async Task GatewaysAsync_SensorsAndGateways_GivesTheGateways()
    {
        await AddSensorAsync("one");
        await Book.AddGatewayAsync(Credential("hub", null), default);
        Assert.Equal(["hub"], (await Book.GatewaysAsync(default)).Select(credential => credential.User));
        await Assert.ThrowsAsync<NameTakenException>(() => Book.AddGatewayAsync(Credential("hub", null), default));
    }
}
