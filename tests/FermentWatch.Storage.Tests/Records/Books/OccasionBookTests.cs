using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class OccasionBookTests : OpenedRecords
{
    private IOccasionBook Book => Get<IOccasionBook>();

    [Fact]
    public async Task TellAsync_OneKeyThereAlready_WritesNothingOfTheSecond()
    {
        Assert.True(await Book.TellAsync([Told("a")], [Notice("first")], default));
        Assert.False(await Book.TellAsync([Told("b"), Told("a")], [Notice("second")], default));
        Assert.Equal(["a"], (await Book.ToldAsync(default)).Select(told => told.Key));
        Assert.Equal(["first"], (await Get<INoticeBook>().LatestAsync(10, default)).Select(notice => notice.Key));
    }

    [Fact]
    public async Task StillSoAsync_Restarted_KeepsWhenItWasLastSo()
    {
        ToldOccasion told = Told("a"), other = Told("b");
        await Book.TellAsync([told, other], [], default);
        await Book.StillSoAsync([told.Id], Noon + Duration.FromHours(3), default);
        await RestartAsync();
        Assert.Equal([("a", Noon + Duration.FromHours(3)), ("b", Noon)], (await Book.ToldAsync(default)).Select(each => (each.Key, each.LastSeenAt)));
    }

    [Fact]
    public async Task MuteAsync_TwiceAndBack_IsMutedOnceAndTold()
    {
        await Book.MuteAsync(OccasionKind.PhDue, true, default);
        await Book.MuteAsync(OccasionKind.PhDue, true, default);
        await Book.MuteAsync(OccasionKind.TooCold, true, default);
        Assert.Equal([OccasionKind.PhDue, OccasionKind.TooCold], (await Book.MutedAsync(default)).Order());
        await Book.MuteAsync(OccasionKind.PhDue, false, default);
        Assert.Equal([OccasionKind.TooCold], await Book.MutedAsync(default));
    }

    private static ToldOccasion Told(string key) => new()
    {
        Id = Guid.CreateVersion7(), Key = key, Kind = OccasionKind.TooWarm, Subject = Guid.Empty, Cause = "spell", ToldAt = Noon, LastSeenAt = Noon,
    };

    private static Notice Notice(string key) => new()
    {
        Id = Guid.CreateVersion7(), Key = key, RouteId = Guid.Empty, Person = "Ada", Title = key, Body = "", DueAt = Noon, ExpiresAt = Noon,
            NextAttemptAt = Noon,
    };
}
