using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class HouseholdBookTests : OpenedRecords
{
    private IHouseholdBook Book => Get<IHouseholdBook>();

    [Fact]
    public async Task ReadAsync_NewDatabase_HasOneWithTheDefaultsInUtc()
    {
        var household = await Book.ReadAsync(default);
        Assert.Equal(("UTC", new LocalTime(7, 0), new LocalTime(19, 0)), (household.TimeZoneId, household.RoundAt, household.EveningAt));
        Assert.Equal((TemperatureUnit.Celsius, MassUnit.Kilogram), (household.TemperatureUnit, household.MassUnit));
        Assert.Equal(RevisionOfANewDatabase, await RevisionAsync());
    }

    [Fact]
    public async Task WriteAsync_EveryField_IsReadBackAfterARestart()
    {
        var household = await Book.ReadAsync(default);
        (household.Name, household.TimeZoneId, household.RoundAt, household.EveningAt) = ("Number Nine", "Europe/Vienna", new LocalTime(6, 30),
            new LocalTime(20, 15, 30));
        (household.TemperatureUnit, household.MassUnit) = (TemperatureUnit.Fahrenheit, MassUnit.Pound);
        await Book.WriteAsync(household, default);
        await RestartAsync();
        Assert.Equivalent(household, await Book.ReadAsync(default), strict: true);
    }

    [Fact]
    public async Task RevisionAsync_Facts_GrowsWithEachSavedChange()
    {
        await Book.WriteAsync(await Book.ReadAsync(default), default);
        Assert.Equal(2, await RevisionAsync());
        var place = await AddPlaceAsync();
        Assert.Equal(3, await RevisionAsync());
        var sensor = await AddSensorAsync("one", place.Id);
        Assert.Equal(4, await RevisionAsync());
        await Get<ISensorBook>().RemoveAsync(sensor.Id, Noon, default);
        Assert.Equal(5, await RevisionAsync());
        place.ShelfOrder = 5;
        await Get<IPlaceBook>().ChangeAsync(place, default);
        Assert.Equal(6, await RevisionAsync());
    }

    [Fact]
    public async Task RevisionAsync_OtherThanFacts_StaysAsItIs()
    {
        await Get<INoticeBook>().AddRouteAsync(
            new NoticeRoute { Id = Guid.CreateVersion7(), Person = "Ada", Channel = Channel.Webhook, Address = "https://example.org" }, default);
        await Get<ISensorBook>().AddGatewayAsync(Credential("hub", null), default);
        Assert.Equal(RevisionOfANewDatabase, await RevisionAsync());
    }

    [Fact]
    public async Task RevisionAsync_ChangesAtOnce_CountsEachOfThem()
    {
        await Task.WhenAll(Enumerable.Range(0, 24).Select(index => Task.Run(() => AddPlaceAsync($"shelf {index}", index))));
        Assert.Equal(25, await RevisionAsync());
    }

    [Fact]
    public void Connections_Opened_WaitForALockAndSyncEveryCommit()
    {
        using var context = Context();
        Assert.Equal(5000, context.Database.SqlQueryRaw<int>("SELECT timeout AS Value FROM pragma_busy_timeout").Single());
        Assert.Equal(2, context.Database.SqlQueryRaw<int>("SELECT synchronous AS Value FROM pragma_synchronous").Single());
        Assert.Equal("wal", context.Database.SqlQueryRaw<string>("SELECT journal_mode AS Value FROM pragma_journal_mode").Single());
    }
}
