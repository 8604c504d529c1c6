using FermentWatch.Kitchen.Forwarding;
using InfluxDB.Client.Writes;

namespace FermentWatch.Export.Forwarding;

/// <summary>A piece of a series as points.</summary>
/// <param name="Points">The points, in the order of the log.</param>
/// <param name="LeftOut">Entries that cannot become a point, with the reason.</param>
/// <param name="Cursor">Where the next slice begins.</param>
public sealed record PointSlice(IReadOnlyList<PointData> Points, IReadOnlyList<NotForwarded> LeftOut, long Cursor);

/// <summary>A slice that was taken, but may not be on the receiver's disk yet.</summary>
/// <param name="Cursor">Where the slice ended.</param>
/// <param name="TakenAt">When it was taken, as a timestamp of the monotonic clock.</param>
/// <param name="Connection">The connection it was taken by.</param>
/// <param name="Last">The last point that was taken; null where all were left out and there is nothing to lose.</param>
/// <param name="LeftOut">What was left out of it.</param>
internal sealed record UnprovenSlice(long Cursor, long TakenAt, long Connection, PointData? Last, IReadOnlyList<NotForwarded> LeftOut);
