using InfluxDB.Client.Writes;

namespace FermentWatch.Export.Receiving;

/// <summary>The database that series are passed on to. Not for two callers at a time.</summary>
public interface IPointReceiver
{
    /// <summary>Writes points in one call. Expected trouble comes back as an outcome; only cancellation is thrown.</summary>
    Task<WriteOutcome> WriteAsync(IReadOnlyList<PointData> points, CancellationToken cancellationToken);
}
