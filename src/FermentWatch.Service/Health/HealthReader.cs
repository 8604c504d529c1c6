using System.Globalization;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Service.Loops;
using FermentWatch.Storage;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Health;

/// <summary>Asks the loops how they stand, and says in the log what is set aside.</summary>
public sealed partial class HealthReader : IHealth
{
    private readonly ServiceLoops _loops;
    private readonly SetAside _setAside;
    private readonly JudgingPass _judging;
    private readonly StorageRemarks _storage;
    private readonly DiskRoom _room;
    private readonly ClockWatch _clockWatch;
    private readonly TimeProvider _clock;
    private readonly Instant _started;

    public HealthReader(
        ServiceLoops loops, SetAside setAside, JudgingPass judging, StorageRemarks storage, DiskRoom room, ClockWatch clockWatch,
        TimeProvider clock, ILogger<HealthReader> logger)
    {
        (_loops, _setAside, _judging, _storage, _room, _clockWatch, _clock) = (loops, setAside, judging, storage, room, clockWatch, clock);
        foreach (string remark in storage.All)
            Log.Remark(logger, remark);
        _started = clock.GetUtcNow().ToInstant();
        setAside.Added += (item, bug) => Log.SetAside(logger, item.Pass, item.What, bug);
    }

    /// <inheritdoc/>
    public HealthReport Read(DateTimeZone? zone = null)
    {
        (string Words, bool IsFull)? room = _room.Read();
        string?[] remarks = [room?.Words, .. _storage.All, _clockWatch.Question(zone ?? DateTimeZone.Utc)];
        return HealthReport.Of(_loops.InOrder.Select(loop => loop.Signs), [.. _setAside.Items, .. _judging.SetAside.Last.Select(Item)],
            [.. remarks.OfType<string>()], _started, _clock.GetUtcNow().ToInstant()) with { DiskIsFull = room?.IsFull == true };
    }

    private SetAsideItem Item(SetAsideReading reading) => new("judging",
        string.Create(CultureInfo.InvariantCulture, $"{reading.Quantity} of sensor {reading.SensorKey} at {reading.MeasuredAt}"), reading.Reason,
            _started, 1);

    private static partial class Log
    {
        [LoggerMessage(3012, LogLevel.Warning, "{Remark}")]
        public static partial void Remark(ILogger logger, string remark);

        [LoggerMessage(3011, LogLevel.Error, "The {Pass} pass set {What} aside: it cannot be digested. The rest goes on.")]
        public static partial void SetAside(ILogger logger, string pass, string what, Exception exception);
    }
}
