using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class NoticeBookTests : OpenedRecords
{
    private INoticeBook Book => Get<INoticeBook>();

    [Fact]
    public async Task QueueAsync_SameKeyAgain_IsCreatedOnce()
    {
        await Book.QueueAsync([Notice("a"), Notice("b"), Notice("b")], default);
        await Book.QueueAsync([Notice("b"), Notice("c")], default);
        Assert.Equal(["a", "b", "c"], (await Book.LatestAsync(10, default)).Select(notice => notice.Key).Order());
    }

    [Fact]
    public async Task ClaimAsync_ManyClaimers_NoTwoGetTheSame()
    {
        await Book.QueueAsync([.. Enumerable.Range(0, 40).Select(index => Notice($"{index}"))], default);
        var claimed = await Task.WhenAll(Enumerable.Range(0, 12)
            .Select(_ => Task.Run(() => Book.ClaimAsync(Noon, Noon + Duration.FromMinutes(2), 5, default))));
        Assert.Equal(40, claimed.Sum(each => each.Count));
        Assert.Equal(40, claimed.SelectMany(each => each).Select(notice => notice.Key).Distinct().Count());
    }

    [Fact]
    public async Task ClaimAsync_ClaimerThatDied_LeavesItToTheNext()
    {
        await Book.QueueAsync([Notice("a"), Notice("later", Noon + Duration.FromHours(1))], default);
        Assert.Equal("a", Assert.Single(await Book.ClaimAsync(Noon, Noon + Duration.FromMinutes(2), 10, default)).Key);
        Assert.Empty(await Book.ClaimAsync(Noon + Duration.FromMinutes(1), Noon + Duration.FromMinutes(3), 10, default));
        Assert.Equal(2, Assert.Single(await Book.ClaimAsync(Noon + Duration.FromMinutes(2), Noon + Duration.FromMinutes(4), 10, default)).Attempts);
    }

    [Fact]
    public async Task SettleAsync_Delivered_IsNotClaimedAgain()
    {
        await Book.QueueAsync([Notice("a")], default);
        var notice = Assert.Single(await Book.ClaimAsync(Noon, Noon, 10, default));
        (notice.State, notice.SettledAt, notice.LastTrouble) = (NoticeState.Delivered, Noon, "slow");
        await Book.SettleAsync(notice, default);
        Assert.Empty(await Book.ClaimAsync(Noon + Duration.FromDays(1), Noon, 10, default));
        Assert.Equivalent(notice, Assert.Single(await Book.LatestAsync(10, default)), strict: true);
    }

    [Fact]
    public async Task SettleAsync_ClaimThatRanOutAndIsAnothers_ChangesNothing()
    {
        await Book.QueueAsync([Notice("a")], default);
        Instant first = Noon + Duration.FromMinutes(5), second = Noon + Duration.FromMinutes(10);
        var late = Assert.Single(await Book.ClaimAsync(Noon, first, 10, default));
        var holder = Assert.Single(await Book.ClaimAsync(first, second, 10, default));
        (late.State, late.SettledAt, late.LastTrouble) = (NoticeState.Expired, first, "late");
        await Book.SettleAsync(late, default);
        Assert.Equal(NoticeState.Queued, Assert.Single(await Book.LatestAsync(10, default)).State);
        (holder.State, holder.SettledAt) = (NoticeState.Delivered, first);
        await Book.SettleAsync(holder, default);
        Assert.Equal((NoticeState.Delivered, null),
            (Assert.Single(await Book.LatestAsync(10, default)).State, (await Book.LatestAsync(10, default))[0].LastTrouble));
    }

    [Fact]
    public async Task FindAsync_NoticeThatAsks_GivesItsQuestionBack()
    {
        Notice asks = Notice("round"), tells = Notice("told");
        asks.Question = new NoticeQuestion(new LocalDate(2026, 10, 4), Noon + Duration.FromHours(9),
            [new AskedShelf(Guid.CreateVersion7(), "Küche", [1, 2, 14], [14])]);
        await Book.QueueAsync([asks, tells], default);
        Assert.Equivalent(asks, await Book.FindAsync(asks.Id, default), strict: true);
        Assert.Null((await Book.FindAsync(tells.Id, default))!.Question);
        Assert.Null(await Book.FindAsync(Guid.CreateVersion7(), default));
    }

    [Fact]
    public async Task RoutesAsync_AddedAndRemoved_GivesWhatIsLeft()
    {
        var routes = new[] { Route("Ben"), Route("Ada") };
        foreach (var route in routes)
            await Book.AddRouteAsync(route, default);
        Assert.Equal(["Ada", "Ben"], (await Book.RoutesAsync(default)).Select(route => route.Person));
        await Book.RemoveRouteAsync(routes[0].Id, default);
        Assert.Equivalent(routes[1], Assert.Single(await Book.RoutesAsync(default)), strict: true);
    }

    [Fact]
    public async Task OpenAsync_SameDateTwice_WritesTheFirstWithItsNotices()
    {
        var rounds = Get<IRoundBook>();
        Assert.Null(await rounds.LastAsync(default));
        Assert.True(await rounds.OpenAsync(Round(4), [Notice("round/4")], default));
        Assert.False(await rounds.OpenAsync(Round(4), [Notice("round/4 again")], default));
        Assert.Equal("round/4", Assert.Single(await Book.LatestAsync(10, default)).Key);
    }

    [Fact]
    public async Task SinceAsync_SeveralRounds_FromTheDateOnByDate()
    {
        var rounds = Get<IRoundBook>();
        foreach (int day in new[] { 10, 9, 30, 11 })
            await rounds.OpenAsync(Round(day), [], default);
        Assert.Equal([10, 11, 30], (await rounds.SinceAsync(new LocalDate(2025, 10, 10), default)).Select(round => round.Date.Day));
        Assert.Equivalent(Round(30), await rounds.LastAsync(default), strict: true);
    }

    private static Round Round(int day) => new()
    {
        Date = new LocalDate(2025, 10, day), DueAt = Noon + Duration.FromDays(day), OpenedAt = Noon + Duration.FromDays(day), Missed = day % 2 == 0,
    };

    private static NoticeRoute Route(string person) =>
        new() { Id = Guid.CreateVersion7(), Person = person, Channel = Channel.Mqtt, Address = "kitchen/notice" };

    private static Notice Notice(string key, Instant? due = null) => new()
    {
        Id = Guid.CreateVersion7(), Key = key, RouteId = Guid.CreateVersion7(), Person = "Ada", Title = "Two jars", Body = "Look at 3 and 4.",
        DueAt = due ?? Noon, ExpiresAt = Noon + Duration.FromDays(1), NextAttemptAt = due ?? Noon,
    };
}
