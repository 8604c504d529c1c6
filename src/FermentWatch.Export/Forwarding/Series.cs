using FermentWatch.Kitchen.Forwarding;
using InfluxDB.Client.Writes;

namespace FermentWatch.Export.Forwarding;

/// <summary>One log of ours, read as points.</summary>
public abstract class Series(SeriesKind kind)
{
    public SeriesKind Kind => kind;

    /// <summary>The points after a cursor, in the order of writing.</summary>
    public abstract Task<PointSlice> AfterAsync(long cursor, int atMost, CancellationToken cancellationToken);

    /// <summary>The point written last of all; null where there is none.</summary>
    public abstract Task<PointData?> NewestAsync(CancellationToken cancellationToken);

    /// <summary>The last place in the log.</summary>
    public abstract Task<long> EndAsync(CancellationToken cancellationToken);
}
