using FermentWatch.Export.Points;
using FermentWatch.Kitchen.Forwarding;
using InfluxDB.Client.Writes;
using NodaTime;

namespace FermentWatch.Export.Forwarding;

/// <summary>A log whose entries become points by a mapping.</summary>
/// <param name="kind">Which series it is.</param>
/// <param name="log">The log.</param>
/// <param name="point">The point of an entry, or null where its owner is not among the names.</param>
/// <param name="owners">Where the names come from.</param>
/// <param name="clock">For the time at which an entry was left out.</param>
public sealed class LogSeries<T>(
    SeriesKind kind, IForwardLog<T> log, Func<T, OwnerNames, PointData?> point, OwnerReader owners, IClock clock) : Series(kind)
    where T : class
{
    public override async Task<PointSlice> AfterAsync(long cursor, int atMost, CancellationToken cancellationToken)
    {
        ForwardSlice<T> slice = await log.AfterAsync(cursor, atMost, cancellationToken);
        if (slice.Entries.Count == 0)
            return new PointSlice([], [], slice.Cursor);
        IReadOnlyList<PointData?> points = await PointsAsync(slice.Entries, cancellationToken);
        Instant now = clock.GetCurrentInstant();
        return new PointSlice(
            [.. points.OfType<PointData>()],
            [.. slice.Entries.Where((_, index) => points[index] is null).Select(entry => new NotForwarded(
                NotForwardedReason.UnknownOwner, $"{entry}", "Its sensor or jar is not in the records.", now))],
            slice.Cursor);
    }

    public override async Task<PointData?> NewestAsync(CancellationToken cancellationToken) =>
        await log.NewestAsync(cancellationToken) is { } newest ? (await PointsAsync([newest], cancellationToken))[0] : null;

    public override Task<long> EndAsync(CancellationToken cancellationToken) => log.EndAsync(cancellationToken);

    private async Task<IReadOnlyList<PointData?>> PointsAsync(IReadOnlyList<T> entries, CancellationToken cancellationToken)
    {
        List<PointData?> points = [];
        foreach (bool everyJar in (bool[])[false, true])
        {
            OwnerNames names = await owners.ReadAsync(everyJar, cancellationToken);
            points = [.. entries.Select(entry => point(entry, names))];
            if (!points.Contains(null))
                break;
        }
        return points;
    }
}
