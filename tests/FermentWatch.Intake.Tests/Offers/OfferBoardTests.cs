using System.Text;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Offers;
using FermentWatch.Intake.Tests.Doubles;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace FermentWatch.Intake.Tests.Offers;

public sealed class OfferBoardTests
{
    private static readonly Instant _now = Instant.FromUtc(2026, 10, 4, 8, 0);

    [Fact]
    public async Task TakeAsync_OfferTaken_TheSensorReportsFromTheNextMessageOn()
    {
        var time = new FakeTimeProvider();
        var household = new Household(time);
        await TakeAsync(household, "gateway/hall", """{"temperature":18.9}""", MessageOrigin.OutsideBroker);
        await TakeAsync(household, "gateway/hall", """{"temperature":19.0}""", MessageOrigin.OutsideBroker);
        Offer offer = Assert.Single(household.Door.Offers.All());
        Assert.Equal((19.0, 2, "gateway-hall"), (offer.Value, offer.Times, offer.SuggestedSlug));
        Assert.Empty(household.Log.Stored);

        await household.AddSensorAsync(offer.SuggestedSlug);
        await household.Rules.AddAsync(offer.ToRule(offer.SuggestedSlug), CancellationToken.None);
        household.Door.Offers.Remove(offer);
        time.Advance(TimeSpan.FromSeconds(1));
        await TakeAsync(household, "gateway/hall", """{"temperature":19.1}""", MessageOrigin.OutsideBroker);

        Assert.Equal([(Quantity.Temperature, 19.1)], household.Log.Stored.Select(reading => (reading.Quantity, reading.Value)));
        Assert.Empty(household.Door.Offers.All());
    }

    [Fact]
    public async Task TakeAsync_RetainedReplay_IsNeverAReadingButMayBeAnOffer()
    {
        var household = new Household();
        await household.AddSensorAsync("cellar");

        await TakeAsync(household, "fermentwatch/sensor/cellar/temperature", "17.5", MessageOrigin.RetainedReplay);
        await TakeAsync(household, "fermentwatch/sensor/cellar/status", "online", MessageOrigin.RetainedReplay);
        await TakeAsync(household, "gateway/hall", """{"temperature":18.9}""", MessageOrigin.RetainedReplay);

        Assert.Empty(household.Log.Stored);
        Assert.Equal(1, household.Door.Counts.Rejected(RejectReason.RetainedReplay));
        Assert.True(household.Door.Presence.Of(1)!.IsOnline);
        Assert.Single(household.Door.Offers.All());
    }

    [Fact]
    public async Task TakeAsync_TalkOfTheHouseOnAnOutsideBroker_IsIgnoredAndNoReject()
    {
        var household = new Household();

        await TakeAsync(household, "lights/hall", """{"state":"ON","brightness":254}""", MessageOrigin.OutsideBroker);
        await TakeAsync(household, "lights/hall", """{"state":"ON","brightness":254}""", MessageOrigin.OurBroker);

        Assert.Equal(1, household.Door.Counts.Ignored);
        Assert.Equal(1, household.Door.Counts.Rejected(RejectReason.UnknownSensor));
    }

    [Fact]
    public void Note_MoreTopicsThanPlaces_ForgetsWhatWasHeardLongestAgo()
    {
        var board = new OfferBoard();
        for (int i = 0; i <= OfferBoard.MostTopics; i++)
            board.Note($"t{i}/temperature", LikenessFinder.Find("t/temperature", "18.5"u8.ToArray()), _now + Duration.FromSeconds(i));

        IReadOnlyList<Offer> offers = board.All();

        Assert.Equal(OfferBoard.MostTopics, offers.Count);
        Assert.Equal($"t{OfferBoard.MostTopics}/temperature", offers[0].Topic);
        Assert.DoesNotContain(offers, offer => offer.Topic == "t0/temperature");
    }

    private static Task<DoorOutcome> TakeAsync(Household household, string topic, string payload, MessageOrigin origin) =>
        household.Door.TakeAsync(
            new IncomingMessage("link", topic, Encoding.UTF8.GetBytes(payload), _now, null, origin), CancellationToken.None);

    [Fact]
    public void Remove_OneOfSeveral_TakesTheSameInAnotherUnitAlongAndLeavesTheRest()
    {
        var board = new OfferBoard();
        IReadOnlyList<Likeness> found =
            LikenessFinder.Find("hub/shelf", "{\"temp_c\": 20.0, \"temp_f\": 68.1, \"outside\": {\"temperature\": 9.5}, \"ph\": 4.1}"u8.ToArray());
        board.Note("hub/shelf", found, _now);
        Assert.Equal(4, board.All().Count);
        board.Remove(board.All().Single(offer => offer.ValuePointer == "/temp_c"));
        Assert.Equal(["/outside/temperature", "/ph"], board.All().Select(offer => offer.ValuePointer));
    }
}
