using FermentWatch.Kitchen.Calendar;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class CalendarFeedBookTests : OpenedRecords
{
    private ICalendarFeedBook Book => Get<ICalendarFeedBook>();

    protected override void Configure(IServiceCollection services) => services.AddIdentityCore<Account>().AddEntityFrameworkStores<RecordsContext>();

    [Fact]
    public async Task RenewAsync_AgainForTheSamePerson_LeavesOneAddress()
    {
        foreach (string name in new[] { "Ada", "Ben" })
            await AddAccountAsync(name);
        await Book.RenewAsync(new CalendarFeed("Ada", "old", Noon), default);
        await Book.RenewAsync(new CalendarFeed("Ben", "other", Noon), default);
        var renewed = new CalendarFeed("Ada", "new", Noon + Duration.FromDays(1));
        await Book.RenewAsync(renewed, default);
        Assert.Equal(renewed, await Book.OfAsync("Ada", default));
        Assert.Equal(renewed, await Book.FindAsync("new", default));
        Assert.Null(await Book.FindAsync("old", default));
        Assert.Equal("Ben", (await Book.FindAsync("other", default))?.Person);
        Assert.Null(await Book.OfAsync("Mira", default));
    }

    [Fact]
    public async Task FindAsync_OfSomebodyWhoIsNotOnRecordAnyMore_OpensNothing()
    {
        await Book.RenewAsync(new CalendarFeed("Ada", "left", Noon), default);
        Assert.Null(await Book.FindAsync("left", default));
    }

    private async Task AddAccountAsync(string name)
    {
        await using AsyncServiceScope scope = Scope();
        var account = new Account { Id = Guid.CreateVersion7(), UserName = name, DisplayName = name };
        Assert.True((await scope.ServiceProvider.GetRequiredService<UserManager<Account>>().CreateAsync(account)).Succeeded);
    }
}
