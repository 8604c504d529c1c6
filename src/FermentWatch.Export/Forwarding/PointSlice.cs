using FermentWatch.Kitchen.Forwarding;
using InfluxDB.Client.Writes;

namespace FermentWatch.Export.Forwarding;

/// <summary>A piece of a series as points.</summary>
/// <param name="Points">The points, in the order of the log.</param>
/// <param name="LeftOut">Entries that cannot become a point, with the reason.</param>
/// <param name="Cursor">Where the next slice begins.</param>
public sealed record PointSlice(IReadOnlyList<PointData> Points, IReadOnlyList<NotForwarded> LeftOut, long Cursor);
