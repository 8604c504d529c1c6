using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;
using NodaTime.Testing;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Notices;

/// <summary>A notice tried again after trouble must not wake anybody.</summary>
public class QuietDeliveryTests
{
    private static readonly Instant Night = Instant.FromUtc(2026, 10, 4, 23, 30);

    [Theory]
    [InlineData(true, 0, NoticeState.Queued, 8)]
    [InlineData(false, 1, NoticeState.Delivered, null)]
    public async Task Run_InQuietHours_WaitsForTheirEndWithoutCountingAnAttempt(bool quiet, int sent, NoticeState state, int? nextAtHour)
    {
        var route = new NoticeRoute { Id = Guid.NewGuid(), Person = "Mira", Channel = Channel.Mqtt, Address = "kitchen" };
        var notice = new Notice
        {
            Id = Guid.NewGuid(), Key = "a", RouteId = route.Id, Person = "Mira", Title = "t", Body = "b",
            DueAt = Night, ExpiresAt = Night + Duration.FromHours(20), NextAttemptAt = Night, Attempts = 1,
        };
        var book = Substitute.For<INoticeBook>();
        book.RoutesAsync(default).ReturnsForAnyArgs([route]);
        book.ClaimAsync(default, default, default, default).ReturnsForAnyArgs((IReadOnlyList<Notice>)[notice], (IReadOnlyList<Notice>)[]);
        var channel = Substitute.For<INoticeChannel>();
        channel.Channel.Returns(Channel.Mqtt);
        channel.SendAsync(default!, default!, default, default).ReturnsForAnyArgs(DeliveryOutcome.Delivered);
        var pass = new DeliveryPass(book, [channel], Make.Households("UTC"), Members(quiet), Make.Jars(), new FakeClock(Night), Make.SetAside());

        Assert.Equal(sent, await pass.RunAsync(CancellationToken.None));
        Assert.Equal((state, sent, nextAtHour ?? Night.InUtc().Hour), (notice.State, notice.Attempts, notice.NextAttemptAt.InUtc().Hour));
    }

    private static IMemberBook Members(bool quiet) => Make.Members(new Member("Mira", MemberRole.Adult, new Duty
    {
        Person = "Mira", QuietFrom = quiet ? new LocalTime(22, 0) : null, QuietUntil = quiet ? new LocalTime(8, 0) : null,
    }));
}
