using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;
using NodaTime.Testing;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Notices;

public class DeliveryPassTests
{
    private static readonly Instant Due = Instant.FromUtc(2026, 10, 4, 5, 0);

    [Theory]
    [InlineData(1, 10)]
    [InlineData(2, 20)]
    [InlineData(3, 40)]
    [InlineData(7, 640)]
    [InlineData(8, 900)]
    [InlineData(1000, 900)]
    public void Backoff_DoublesUpToAQuarterOfAnHour(int attempts, int seconds) =>
        Assert.Equal(Duration.FromSeconds(seconds), Backoff.Outside.After(attempts));

    [Fact]
    public void Apply_Trouble_QueuesAgainAndKeepsWhatWasSaid()
    {
        Notice notice = Applied(DeliveryOutcome.TryAgain("The receiver answered 503."), Due);
        Assert.Equal((NoticeState.Queued, Due + Duration.FromSeconds(10), "The receiver answered 503."),
            (notice.State, notice.NextAttemptAt, notice.LastTrouble));
    }

    [Theory]
    [InlineData(1800, 1800)]
    [InlineData(3, 10)]
    public void Apply_ReceiverAsksToBeLeftAlone_IsTriedAgainNoSooner(int asked, int seconds) =>
        Assert.Equal(Due + Duration.FromSeconds(seconds),
        Applied(DeliveryOutcome.TryAgain("The receiver answered 429.", Duration.FromSeconds(asked)), Due).NextAttemptAt);

    [Fact]
    public void Apply_TroubleAfterItsTime_Expires() =>
        Assert.Equal(NoticeState.Expired, Applied(DeliveryOutcome.TryAgain("gone"), Due + Duration.FromHours(12)).State);

    [Fact]
    public void Apply_Refused_IsNeverTriedAgain() =>
        Assert.Equal(NoticeState.Refused, Applied(DeliveryOutcome.Refused("410 Gone"), Due).State);

    [Fact]
    public async Task RunAsync_OneChannelHasABug_TheOthersAreToldAndTheReasonIsKept()
    {
        (INoticeBook book, Notice[] notices) = Outbox("Mira", "Jonah");
        await Pass(book, (notice, _) => notice.Person == "Mira" ? throw new FormatException("a line break in a header") : Delivered)
            .RunAsync(default);
        Assert.Equal(
            [(NoticeState.Queued, "It could not be sent: a line break in a header"), (NoticeState.Delivered, null)],
            notices.Select(notice => (notice.State, notice.LastTrouble)));
        await book.Received(2).SettleAsync(Arg.Any<Notice>(), Arg.Any<CancellationToken>());
    }

    [Fact]
    public async Task RunAsync_StoppedWhileOneReceiverHangs_TheOtherIsWrittenDown()
    {
        (INoticeBook book, Notice[] notices) = Outbox("Mira", "Jonah");
        using var stop = new CancellationTokenSource();
        var settled = new List<string>();
        book.SettleAsync(Arg.Any<Notice>(), Arg.Any<CancellationToken>()).Returns(call =>
        {
            settled.Add(call.Arg<Notice>().Person);
            return stop.CancelAsync();
        });
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Pass(book, async (notice, cancellationToken) =>
        {
            if (notice.Person == "Mira")
                await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, cancellationToken);
            return DeliveryOutcome.Delivered;
        }).RunAsync(stop.Token));
        Assert.Equal(["Jonah"], settled);
        Assert.Equal([NoticeState.Queued, NoticeState.Delivered], notices.Select(notice => notice.State));
    }

    private static Task<DeliveryOutcome> Delivered => Task.FromResult(DeliveryOutcome.Delivered);

    private static DeliveryPass Pass(INoticeBook book, Func<Notice, CancellationToken, Task<DeliveryOutcome>> send)
    {
        INoticeChannel channel = Substitute.For<INoticeChannel>();
        channel.Channel.Returns(Channel.Webhook);
        channel.SendAsync(Arg.Any<Notice>(), Arg.Any<NoticeRoute>(), Arg.Any<string?>(), Arg.Any<CancellationToken>())
            .Returns(call => send(call.Arg<Notice>(), call.Arg<CancellationToken>()));
        return new DeliveryPass(book, [channel], Make.Households("UTC"), Make.Members(), Make.Jars(), new FakeClock(Due), Make.SetAside());
    }

    /// <summary>An outbox with one notice for each person, claimed once.</summary>
    private static (INoticeBook Book, Notice[] Notices) Outbox(params string[] people)
    {
        INoticeBook book = Substitute.For<INoticeBook>();
        NoticeRoute[] routes =
            [.. people.Select(person =>
            new NoticeRoute { Id = Guid.NewGuid(), Person = person, Channel = Channel.Webhook, Address = "https://push.example.net/" })];
        Notice[] notices = [.. routes.Select(route => New(route.Person, route.Id))];
        book.RoutesAsync(default).ReturnsForAnyArgs(routes);
        book.ClaimAsync(default, default, default, default).ReturnsForAnyArgs(notices, (IReadOnlyList<Notice>)[]);
        return (book, notices);
    }

    private static Notice Applied(DeliveryOutcome outcome, Instant now)
    {
        Notice notice = New("Mira", Guid.NewGuid());
        DeliveryPass.Apply(notice, outcome, now);
        return notice;
    }

    private static Notice New(string person, Guid routeId) => new()
    {
        Id = Guid.NewGuid(), Key = $"round/2026-10-04/{person}", RouteId = routeId, Person = person, Title = "t", Body = "b",
        DueAt = Due, ExpiresAt = Due + Duration.FromHours(12), NextAttemptAt = Due, Attempts = 1,
    };
}
