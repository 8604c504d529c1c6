using FermentWatch.Export.Receiving;
using FermentWatch.Kitchen.Forwarding;
using InfluxDB.Client.Writes;
using NodaTime;

namespace FermentWatch.Export.Forwarding;

/// <summary>Parts points the receiver takes from those it refuses, by halves: one bad point must not cost the others theirs.</summary>
internal sealed class RefusedPointSearch(IPointReceiver receiver, IClock clock)
{
    private readonly List<NotForwarded> _refused = [];

    /// <summary>The points that are refused each for itself.</summary>
    public IReadOnlyList<NotForwarded> Refused => _refused;

    /// <summary>The last point that was taken.</summary>
    public PointData? LastTaken { get; private set; }

    /// <summary>The connection all that was taken came by; <see cref="WriteOutcome.NoConnection"/> where it was not one and the same.</summary>
    public long Connection { get; private set; }

    /// <summary>Writes points of which at least one is refused. Returns the trouble that ended it early, or null.</summary>
    public async Task<WriteOutcome?> PartAsync(IReadOnlyList<PointData> points, string refusal, CancellationToken cancellationToken)
    {
        if (points.Count == 1)
        {
            _refused.Add(new NotForwarded(NotForwardedReason.Refused, points[0].ToLineProtocol(), refusal, clock.GetCurrentInstant()));
            return null;
        }
        int half = points.Count / 2;
        return await WriteAsync([.. points.Take(half)], cancellationToken) ?? await WriteAsync([.. points.Skip(half)], cancellationToken);
    }

    private async Task<WriteOutcome?> WriteAsync(IReadOnlyList<PointData> points, CancellationToken cancellationToken)
    {
        WriteOutcome outcome = await receiver.WriteAsync(points, cancellationToken);
        if (outcome.Result == WriteResult.Refused)
            return await PartAsync(points, outcome.Trouble!, cancellationToken);
        if (outcome.Result == WriteResult.TryAgain)
            return outcome;
        Connection = LastTaken is null || Connection == outcome.Connection ? outcome.Connection : WriteOutcome.NoConnection;
        LastTaken = points[^1];
        return null;
    }
}
