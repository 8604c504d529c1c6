using System.Text.Json;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Notices.Mqtt;
using NodaTime;
using NSubstitute;

namespace FermentWatch.Notices.Tests;

public sealed class MqttChannelTests
{
    private const string Topic = "kitchen/notices";
    private static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 5, 0);
    private readonly IMessageOutlet _outlet = Substitute.For<IMessageOutlet>();

    [Fact]
    public async Task SendAsync_SomebodyListens_IsDeliveredWithItsKeyAndNotRetained()
    {
        byte[] sent = [];
        _outlet.PublishAsync(Topic, Arg.Do<ReadOnlyMemory<byte>>(payload => sent = payload.ToArray()), retain: false, default)
            .ReturnsForAnyArgs(true);
        Assert.Equal(DeliveryOutcome.Delivered, await SendAsync());
        Assert.Equal("round/2026-10-04/Mira", JsonDocument.Parse(sent).RootElement.GetProperty("key").GetString());
        await _outlet.Received(1).PublishAsync(Topic, Arg.Any<ReadOnlyMemory<byte>>(), false, Arg.Any<CancellationToken>());
    }

    [Fact]
    public async Task SendAsync_NobodyListens_IsTriedAgain() =>
        Assert.Equal(DeliveryOutcome.TryAgain("Nobody listens to kitchen/notices, or the broker cannot be reached."), await SendAsync());

    private Task<DeliveryOutcome> SendAsync()
    {
        var notice = new Notice
        {
            Id = Guid.NewGuid(), Key = "round/2026-10-04/Mira", RouteId = Guid.NewGuid(), Person = "Mira", Title = "Sun 4 Oct: 3 jars, one minute",
            Body = "Counter 1 to 3: all under brine?", DueAt = Now, ExpiresAt = Now + Duration.FromHours(12), NextAttemptAt = Now,
        };
        var route = new NoticeRoute { Id = Guid.NewGuid(), Person = "Mira", Channel = Channel.Mqtt, Address = Topic };
        return new MqttChannel(_outlet).SendAsync(notice, route, null, CancellationToken.None);
    }
}
