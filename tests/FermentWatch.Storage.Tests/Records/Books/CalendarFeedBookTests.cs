using FermentWatch.Kitchen.Feeds;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class CalendarFeedBookTests : OpenedRecords
{
    private ICalendarFeedBook Book => Get<ICalendarFeedBook>();

    [Fact]
    public async Task RenewAsync_AgainForTheSamePerson_LeavesOneAddress()
    {
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
}
