using System.Text;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Tests.Doubles;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace FermentWatch.Intake.Tests.Door;

/// <summary>A service that was killed between commit and acknowledgement and starts again.</summary>
public sealed class RowsBeforeStartTests
{
    private const string Temperature = "fermentwatch/sensor/cellar/temperature";
    private static readonly Instant _before = Instant.FromUtc(2026, 10, 4, 8, 0);

    private readonly Household _household = new();
    private readonly FakeTimeProvider _time = new(_before.ToDateTimeOffset());

    [Fact]
    public async Task TakeAsync_RedeliveredAfterARestart_EachRowIsMatchedOnce()
    {
        MessageDoor door = await StoredThenRestartedAsync("17.5", "17.6", "17.5");

        foreach (string value in (string[])["17.5", "17.6", "17.5"])
            await TakeAsync(door, value, isDuplicate: true);
        Assert.Equal(3, _household.Log.Stored.Count);
        Assert.Equal(3, door.Counts.Redeliveries);

        await TakeAsync(door, "17.5", isDuplicate: true);
        await TakeAsync(door, "17.7", isDuplicate: true);
        await TakeAsync(door, "17.6", isDuplicate: false);
        Assert.Equal([17.5, 17.6, 17.5, 17.5, 17.7, 17.6], _household.Log.Stored.Select(reading => reading.Value));
    }

    [Fact]
    public async Task TakeAsync_RowsLongBeforeTheLast_AreOtherReadings()
    {
        MessageDoor old = await StoredThenRestartedAsync("17.5");
        await TakeAsync(old, "17.6", isDuplicate: false, _before + RowsBeforeStart.Reach + Duration.FromSeconds(1));
        _time.Advance(TimeSpan.FromHours(1));
        MessageDoor door = Restarted();

        await TakeAsync(door, "17.6", isDuplicate: true);
        await TakeAsync(door, "17.5", isDuplicate: true);

        Assert.Equal([17.5, 17.6, 17.5], _household.Log.Stored.Select(reading => reading.Value));
    }

    [Fact]
    public async Task TakeAsync_LogCannotBeRead_IsNotAcknowledgedAndTriedAgain()
    {
        await StoredThenRestartedAsync("17.5");
        var log = new MemoryReadingLog(_household.Log) { FailuresLeft = 1 };
        var door = new MessageDoor(_household.Log, _household.Directory, rows: new RowsBeforeStart(log, _time));

        await Assert.ThrowsAsync<IOException>(() => TakeAsync(door, "17.5", isDuplicate: true));
        await TakeAsync(door, "17.5", isDuplicate: true);

        Assert.Single(_household.Log.Stored);
    }

    private async Task<MessageDoor> StoredThenRestartedAsync(params string[] values)
    {
        await _household.AddSensorAsync("cellar");
        foreach (string value in values)
            await TakeAsync(_household.Door, value, isDuplicate: false);
        _time.Advance(TimeSpan.FromHours(1));
        return Restarted();
    }

    private MessageDoor Restarted() =>
        new(_household.Log, _household.Directory, rows: new RowsBeforeStart(new MemoryReadingLog(_household.Log), _time));

    private static Task<DoorOutcome> TakeAsync(MessageDoor door, string value, bool isDuplicate, Instant? at = null) => door.TakeAsync(
        new IncomingMessage(
            "link", Temperature, Encoding.UTF8.GetBytes(value),
            at ?? (isDuplicate ? _before + Duration.FromHours(2) : _before), new Delivery(7, isDuplicate)),
        CancellationToken.None);
}
