using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class SourceRuleBookTests : OpenedRecords
{
    private ISourceRuleBook Book => Get<ISourceRuleBook>();

    private IRejudgeBook Orders => Get<IRejudgeBook>();

    [Fact]
    public async Task AllAsync_RulesAddedInOneMillisecond_ComeAsTheyWereAddedWithEveryField()
    {
        var full = new SourceRule
        {
            Id = Guid.CreateVersion7(), TopicFilter = "hub/{device}", Payload = SourcePayload.Json, Quantity = Quantity.Temperature,
            ValuePointer = "/t", Unit = "degF", UnitPointer = "/u", Time = SourceTime.UnixSeconds, TimePointer = "/at", Offset = -0.5,
            PlausibleLow = 1, PlausibleHigh = 30, LongestSilence = Duration.FromHours(3),
        };
        await Book.AddAsync(full, default);
        for (int i = 0; i < 5; i++)
            await Book.AddAsync(Rule($"bare/{i}", "shelf"), default);

        IReadOnlyList<SourceRule> all = await Book.AllAsync(default);

        Assert.Equal(["hub/{device}", "bare/0", "bare/1", "bare/2", "bare/3", "bare/4"], all.Select(rule => rule.TopicFilter));
        Assert.Equivalent(full, all[0], strict: true);
    }

    [Fact]
    public async Task RemoveAsync_Rule_TakesItsFeedsAlong()
    {
        Sensor sensor = await AddSensorAsync("shelf");
        SourceRule rule = Rule("hub/{device}", null);
        await Book.AddAsync(rule, default);
        var feed = new SourceFeed(rule.Id, sensor.Id);
        await Book.NoteFeedAsync(feed, default);
        await Book.NoteFeedAsync(feed, default);
        Assert.Equal([feed], await Book.FeedsAsync(default));

        Assert.True(await Book.RemoveAsync(rule.Id, default));
        Assert.False(await Book.RemoveAsync(rule.Id, default));
        await Book.NoteFeedAsync(feed, default);

        Assert.Empty(await Book.FeedsAsync(default));
        Assert.Empty(await Orders.PendingAsync(default));
    }

    [Fact]
    public async Task AddAndRemoveAsync_RuleWithARange_OrderItsSensorToBeJudgedAgain()
    {
        Sensor sensor = await AddSensorAsync("shelf");
        await AddSensorAsync("other");
        SourceRule rule = Rule("probe", "shelf", low: 2);
        await Book.AddAsync(rule, default);
        RejudgeOrder order = Assert.Single(await Orders.PendingAsync(default));
        Assert.Equal((sensor.Id, Quantity.Temperature), (order.SensorId, order.Quantity));

        await Orders.DoneAsync(order.Id, default);
        await Book.RemoveAsync(rule.Id, default);

        Assert.Equal(sensor.Id, Assert.Single(await Orders.PendingAsync(default)).SensorId);
    }

    [Fact]
    public async Task NoteFeedAsync_RuleWithARangeForAnyDevice_OrdersTheDeviceOnce()
    {
        Sensor sensor = await AddSensorAsync("shelf");
        SourceRule rule = Rule("hub/{device}", null, low: 2);
        await Book.AddAsync(rule, default);
        Assert.Empty(await Orders.PendingAsync(default));
        await Book.NoteFeedAsync(new SourceFeed(rule.Id, sensor.Id), default);
        await Book.NoteFeedAsync(new SourceFeed(rule.Id, sensor.Id), default);
        Assert.Equal(sensor.Id, Assert.Single(await Orders.PendingAsync(default)).SensorId);
    }

    [Fact]
    public async Task ProbeAddAsync_SentTwice_IsFiledOnceWithItsPointsAndOrdersTheSensor()
    {
        Sensor sensor = await AddSensorAsync("probe");
        var check = new ProbeCheck
        {
            Id = Guid.CreateVersion7(), SensorId = sensor.Id, At = Noon, EnteredAt = Noon, By = "Ada",
            Points = [new BufferReading(ReferenceBuffer.Technical7, -3, 20), new BufferReading(ReferenceBuffer.Phthalate4, 168.5, 20.5)],
        };
        await Get<IProbeBook>().AddAsync(check, default);
        await Get<IProbeBook>().AddAsync(check, default);
        await RestartAsync();
        ProbeCheck read = Assert.Single(await Get<IProbeBook>().StandingAsync(default));
        Assert.Equal(check.Points, read.Points);
        Assert.Equal(check.Calibration.Slope, read.Calibration.Slope);
        Assert.Equal(sensor.Id, Assert.Single(await Orders.PendingAsync(default)).SensorId);
    }

    [Fact]
    public async Task ProbeTakeBackAsync_FiledCheck_IsKeptWithWhoDidItAndOrdersTheSensor()
    {
        Sensor sensor = await AddSensorAsync("probe");
        var check = new ProbeCheck
        {
            Id = Guid.CreateVersion7(), SensorId = sensor.Id, At = Noon, EnteredAt = Noon, By = "Ada",
            Points = [new BufferReading(ReferenceBuffer.Technical7, -3, 20), new BufferReading(ReferenceBuffer.Phthalate4, 168.5, 20.5)],
        };
        var book = Get<IProbeBook>();
        await book.AddAsync(check, default);
        await Orders.DoneAsync(Assert.Single(await Orders.PendingAsync(default)).Id, default);
        Instant later = Noon + Duration.FromHours(1);

        Assert.True(await book.TakeBackAsync(check.Id, later, "Ben", default));
        Assert.False(await book.TakeBackAsync(check.Id, later + Duration.FromHours(1), "Cleo", default));

        Assert.Equal(sensor.Id, Assert.Single(await Orders.PendingAsync(default)).SensorId);
        Assert.Empty(await book.StandingAsync(default));
        ProbeCheck kept = Assert.Single(await book.FiledAsync(sensor.Id, default));
        Assert.Equal((later, "Ben"), (kept.VoidedAt, kept.VoidedBy));
        await Assert.ThrowsAsync<InvalidOperationException>(() => book.TakeBackAsync(Guid.Empty, later, "Ben", default));
    }

    [Fact]
    public async Task Announcements_AddedTwiceAndTakenBack_AreThereOnceAndThenGone()
    {
        var book = Get<IAnnouncementBook>();
        await book.AddAsync(["a", "b"], default);
        await book.AddAsync(["b", "c"], default);
        Assert.Equal(["a", "b", "c"], await book.TopicsAsync(default));
        await book.RemoveAsync(["a", "c"], default);
        Assert.Equal(["b"], await book.TopicsAsync(default));
    }

    [Fact]
    public async Task SensorAddAsync_NoCredential_AddsTheSensorAlone()
    {
        var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = "hub-1", Name = "hub 1", AddedAt = Noon };
        Assert.Equal(1, (await Get<ISensorBook>().AddAsync(sensor, null, default)).Key);
        Assert.Null(await Get<ISensorBook>().CredentialAsync("hub-1", default));
    }

    private static SourceRule Rule(string filter, string? slug, double? low = null) => new()
    {
        Id = Guid.CreateVersion7(), TopicFilter = filter, SensorSlug = slug, Payload = SourcePayload.Number,
        Quantity = Quantity.Temperature, Unit = "Cel", PlausibleLow = low,
    };
}
