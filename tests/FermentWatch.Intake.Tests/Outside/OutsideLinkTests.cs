using FermentWatch.Intake.Tests.Embedded;
using FermentWatch.Intake.Tests.Peers;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Intake.Tests.Outside;

public sealed class OutsideLinkTests
{
    private const string Temperature = "fermentwatch/sensor/cellar/temperature";

    [Theory]
    [InlineData("5")]
    [InlineData("3.1.1")]
    public async Task Published_WhileTheLinkIsAway_WaitsAtTheBrokerAndIsStoredOnce(string version)
    {
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await using LinkUnderTest link = await LinkUnderTest.StartAsync(broker, set: options => options.ProtocolVersion = version);
        await PublishAsync(broker, Temperature, "17.1");
        await link.StoredAsync(1);

        await link.StopAsync();
        for (int i = 2; i <= 5; i++)
            await PublishAsync(broker, Temperature, $"17.{i}");
        await link.StartAsync();
        await link.StoredAsync(5);
        await PublishAsync(broker, Temperature, "17.6");
        await link.StoredAsync(6);

        Assert.Equal([17.1, 17.2, 17.3, 17.4, 17.5, 17.6], link.Values);
    }

    [Fact]
    public async Task Published_LogCannotBeWritten_IsNotAcknowledgedAndComesAgain()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await using LinkUnderTest link = await LinkUnderTest.StartAsync(broker);
        link.Log.Expected.Add(2103);
        link.Household.Log.FailNext(1);

        await PublishAsync(broker, Temperature, "17.1");
        await link.StoredAsync(1);
        await Eventually.TrueAsync(() => link.Link.Counts.Acknowledged == 1, "it is acknowledged");

        Assert.Equal([17.1], link.Values);
        Assert.Equal(1, link.Link.Counts.NotStored);
        Assert.Equal(2, link.Link.Counts.Connects);
        Assert.Single(link.Log.Entries, entry => entry.Id == 2103);
    }

    [Fact]
    public async Task Subscribe_RetainedAtTheBroker_IsNoNewReadingAndALivePublishIs()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await PublishAsync(broker, Temperature, "16.0", "-r");
        await using LinkUnderTest link = await LinkUnderTest.StartAsync(broker);
        await Eventually.TrueAsync(
            () => link.Household.Door.Counts.Rejected(RejectReason.RetainedReplay) == 1, "the replay is counted");

        await PublishAsync(broker, Temperature, "17.0", "-r");
        await link.StoredAsync(1);

        Assert.Equal([17.0], link.Values);
    }

    [Fact]
    public async Task Rules_AddedWhileConnected_AreListenedToAndOverlappingOnesGiveOneReading()
    {
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 10, 4, 8, 0, 0, TimeSpan.Zero));
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await using LinkUnderTest link = await LinkUnderTest.StartAsync(broker, time, options => options.DiscoverFilters = "+/cellar/#");
        await link.Household.Rules.AddAsync(Rule("gateway/{device}/+"), CancellationToken.None);
        await link.Household.Rules.AddAsync(Rule("other/{device}/state"), CancellationToken.None);

        // The link may set its timer a moment after it has connected: a step of the clock before that would be lost.
        await Eventually.TrueAsync(
            () =>
            {
                time.Advance(TimeSpan.FromSeconds(10));
                return link.Household.Rules.Queries >= 2;
            },
            "the rules were looked at again");
        // A subscription made meanwhile is known to be in place once a message on it has come through.
        await Eventually.TrueAsync(
            () =>
            {
                PublishAsync(broker, "other/hall/state", "1").GetAwaiter().GetResult();
                return link.Household.Door.Counts.Messages > 0;
            },
            "the new topics are listened to");
        await PublishAsync(broker, "gateway/cellar/state", "17.5");
        await PublishAsync(broker, "other/cellar/state", "17.6");
        await link.StoredAsync(2);
        await PublishAsync(broker, Temperature, "17.7");
        await link.StoredAsync(3);

        Assert.Equal([17.5, 17.6, 17.7], link.Values);
    }

    [Fact]
    public async Task PublishAsync_OurOwn_GoesOutAndDoesNotComeBackIn()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await using LinkUnderTest link = await LinkUnderTest.StartAsync(broker, set: options => options.DiscoverFilters = "#");

        Assert.True(await link.Link.PublishAsync("fermentwatch/jar/1/state", "{\"temperature\":18.5}"u8.ToArray(), true, CancellationToken.None));
        await PublishAsync(broker, Temperature, "17.5");
        await link.StoredAsync(1);
        string heard = await MosquittoPublisher.HearAsync(broker.Port, "fermentwatch/#", 2);

        Assert.Empty(link.Household.Door.Offers.All());
        Assert.Contains("fermentwatch/jar/1/state {\"temperature\":18.5}", heard, StringComparison.Ordinal);
        Assert.Contains("fermentwatch/service/status online", heard, StringComparison.Ordinal);
        await link.StopAsync();
        Assert.Contains("fermentwatch/service/status offline", await MosquittoPublisher.HearAsync(broker.Port, "fermentwatch/service/#", 1),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Connect_TlsWithOurCertificate_IsLetIn()
    {
        using var certificate = new SelfSignedCertificate();
        await using Mosquitto broker = await Mosquitto.StartAsync(
            $"cafile {certificate.CertificateFile}", $"certfile {certificate.CertificateFile}", $"keyfile {certificate.KeyFile}",
            "require_certificate true", "use_identity_as_username true");
        await using LinkUnderTest link = await LinkUnderTest.StartAsync(broker, set: options =>
        {
            (options.UseTls, options.AuthorityFile) = (true, certificate.CertificateFile);
            (options.ClientCertificateFile, options.ClientKeyFile) = (certificate.CertificateFile, certificate.KeyFile);
        });

        Assert.Null(link.Link.Problem);
    }

    private static SourceRule Rule(string filter) => new()
    {
        Id = Guid.CreateVersion7(), TopicFilter = filter, Payload = SourcePayload.Number, Quantity = Quantity.Temperature, Unit = "Cel",
    };

    private static async Task PublishAsync(Mosquitto broker, string topic, string payload, params string[] more)
    {
        var (exit, error) = await MosquittoPublisher.RunAsync(
            ["-h", "127.0.0.1", "-p", $"{broker.Port}", "-q", "1", "-t", topic, "-m", payload, .. more]);
        Assert.Equal((0, ""), (exit, error));
    }
}
