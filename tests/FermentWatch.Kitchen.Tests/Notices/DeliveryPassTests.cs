using FermentWatch.Kitchen.Notices;
using NodaTime;

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
        Assert.Equal(Duration.FromSeconds(seconds), Backoff.After(attempts));

    [Fact]
    public void Apply_Trouble_QueuesAgainAndKeepsWhatWasSaid()
    {
        Notice notice = Applied(DeliveryOutcome.TryAgain("The receiver answered 503."), Due);
        Assert.Equal((NoticeState.Queued, Due + Duration.FromSeconds(10), "The receiver answered 503."), (notice.State, notice.NextAttemptAt, notice.LastTrouble));
    }

    [Fact]
    public void Apply_TroubleAfterItsTime_Expires() =>
        Assert.Equal(NoticeState.Expired, Applied(DeliveryOutcome.TryAgain("gone"), Due + Duration.FromHours(12)).State);

    [Fact]
    public void Apply_Refused_IsNeverTriedAgain() =>
        Assert.Equal(NoticeState.Refused, Applied(DeliveryOutcome.Refused("410 Gone"), Due).State);

    private static Notice Applied(DeliveryOutcome outcome, Instant now)
    {
        var notice = new Notice
        {
            Id = Guid.NewGuid(), Key = "round/2026-10-04/Mira", RouteId = Guid.NewGuid(), Person = "Mira", Title = "t", Body = "b",
            DueAt = Due, ExpiresAt = Due + Duration.FromHours(12), NextAttemptAt = Due, Attempts = 1,
        };
        DeliveryPass.Apply(notice, outcome, now);
        return notice;
    }
}
