using CsCheck;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Tests.Decoding;
using FermentWatch.Intake.Tests.Doubles;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Intake.Tests.Door;

public sealed class MessageDoorPropertyTests
{
    private static readonly Instant _now = Instant.FromUtc(2026, 10, 4, 8, 0);

    private static readonly string[] _topicPieces =
    [
        "fermentwatch", "sensor", "jar", "cellar", "attic", "temperature", "ph", "status", "checked", "state", "/", "/", "/", "+", "#", "$SYS",
        "", " ", "\0", "\u0001", "é", "\ud800", "gateway", "%", new string('x', 300),
    ];

    private static readonly Gen<string> _topic =
        Gen.Int[0, _topicPieces.Length - 1].Select(index => _topicPieces[index]).Array[0, 9].Select(string.Concat);

    private static readonly Gen<MessageOrigin> _origin =
        Gen.Int[0, 2].Select(origin => (MessageOrigin)origin);

    [Fact]
    public async Task TakeAsync_AnyTopicAndPayload_NeverThrowsAndStaysWithinBounds()
    {
        var household = new Household();
        await household.AddSensorAsync("cellar");
        await household.Rules.AddAsync(
            new SourceRule
            {
                Id = Guid.Empty, TopicFilter = "gateway/{device}/#", Payload = SourcePayload.Json, Quantity = Quantity.Temperature,
                ValuePointer = "/v", Unit = "Cel",
            },
            CancellationToken.None);

        await Gen.Select(_topic, AnyPayload.Bytes, _origin, Gen.UShort, Gen.Bool).SampleAsync(
            (topic, payload, origin, packet, duplicate) => household.Door.TakeAsync(
                new IncomingMessage("fuzz", topic, payload, _now, new Delivery(packet, duplicate), origin), CancellationToken.None),
            iter: Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 1_000_000 : 20_000);

        Assert.All(household.Log.Stored, reading => Assert.True(double.IsFinite(reading.Value)));
        Assert.All(household.Log.Rejects, reject =>
        {
            Assert.True(reject.Topic.Length <= 200 && reject.Example.Length <= 200);
            Assert.DoesNotContain('\0', reject.Topic);
        });
        Assert.InRange(household.Door.Offers.All().Count, 0, 300 * 8);
    }
}
