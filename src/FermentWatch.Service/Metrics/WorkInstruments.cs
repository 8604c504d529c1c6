using System.Diagnostics.Metrics;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Service.Loops;
using FermentWatch.Storage;
using NodaTime;

namespace FermentWatch.Service.Metrics;

/// <summary>What the loops do, what waits for them, and the room they have.</summary>
internal static class WorkInstruments
{
    public static void AddLoops(this Meter meter, IReadOnlyList<Loop> loops, IClock clock)
    {
        Instant started = clock.GetCurrentInstant();
        meter.CreateObservableCounter("fermentwatch.loop.passes", () => Each(loop => loop.Passes), null, "Passes that have ended, well or not.");
        meter.CreateObservableCounter("fermentwatch.loop.failures", () => Each(loop => loop.Failures), null, "Passes that failed.");
        meter.CreateObservableGauge("fermentwatch.loop.last_pass_duration", () => Each(loop => loop.LastTook.TotalSeconds), Instruments.Seconds,
            "How long the last pass took.");
        meter.CreateObservableGauge("fermentwatch.loop.lag",
            () => Each(loop => (clock.GetCurrentInstant() - (loop.LastPass ?? started)).TotalSeconds), Instruments.Seconds,
            "Since the last pass that went well began, or since the start. A loop looks each minute.");

        IEnumerable<Measurement<T>> Each<T>(Func<Loop, T> read) where T : struct =>
            loops.Select(loop => new Measurement<T>(read(loop), new KeyValuePair<string, object?>("loop", loop.Name)));
    }

    public static void AddWork(this Meter meter, ForecastCounts forecasts, DeliveryCounts deliveries, SetAside setAside)
    {
        meter.Count("fermentwatch.forecast.computed", "Forecasts that were computed.", () => forecasts.Computed);
        meter.CreateObservableCounter("fermentwatch.forecast.duration", () => forecasts.Took.TotalSeconds, Instruments.Seconds,
            "How long forecasts took, all together.");
        meter.CreateObservableCounter("fermentwatch.notice.attempts", () =>
            from channel in Enum.GetValues<Channel>()
            from outcome in (NoticeState[])[NoticeState.Delivered, NoticeState.Queued, NoticeState.Refused, NoticeState.Expired]
            select new Measurement<long>(deliveries.Attempts(channel, outcome),
                Instruments.Label("channel", channel), Instruments.Label("left", outcome)), null,
            "Attempts to deliver a notice, by what they left it as: queued will be tried again.");
        meter.Gauge("fermentwatch.set_aside", null, "Things that passes could not digest; the rest goes on.", () => setAside.Items.Count);
    }

    public static void AddBacklog(this Meter meter, Backlog backlog, bool forwards)
    {
        meter.Gauge<Channel>("fermentwatch.notice.waiting", null, "Notices that wait to be delivered.", "channel", backlog.Notices);
        if (!forwards)
            return;
        meter.Gauge<SeriesKind>("fermentwatch.forwarding.waiting", null,
            "Points that the receiver is not known to have on its disk.", "series", backlog.Points);
        meter.Gauge<SeriesKind>("fermentwatch.forwarding.oldest", Instruments.Seconds,
            "Since the first of them came in; 0 where none waits.", "series", backlog.OldestSeconds);
    }

    public static void AddDisk(this Meter meter, DiskRoom room)
    {
        meter.Gauge("fermentwatch.disk.free", Instruments.Bytes, "What is left on the disk of the databases.", () => room.FreeBytes() ?? double.NaN);
        meter.CreateObservableGauge("fermentwatch.database.size", () => room.UsedBytes().Select(each =>
            new Measurement<long>(each.Value, new KeyValuePair<string, object?>("database", each.Key))), Instruments.Bytes,
            "What a database takes up, with what is written beside it.");
    }
}
