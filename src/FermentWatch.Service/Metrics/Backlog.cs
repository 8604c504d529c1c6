using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Service.Metrics;

/// <summary>
/// What waits in the databases. Instruments cannot wait for an answer: it is read before they are asked. What cannot be read is not a
/// number, and all other figures are shown.
/// </summary>
internal sealed class Backlog(
    INoticeBook notices, IForwardCursors cursors, IForwardLog<Reading> readings, IEstimateLog estimates, IForwardLog<LoggedObservation> observations,
    IClock clock)
{
    private volatile IReadOnlyDictionary<Channel, int>? _notices;
    private volatile IReadOnlyDictionary<SeriesKind, WaitingEntries>? _points;

    /// <summary>Reads how things stand now.</summary>
    /// <param name="forwards">Whether series are passed on at all.</param>
    /// <param name="cancellationToken">Nobody waits for the answer any more.</param>
    public async Task ReadAsync(bool forwards, CancellationToken cancellationToken)
    {
        _notices = await OrNullAsync(() => notices.WaitingAsync(cancellationToken));
        _points = forwards ? await OrNullAsync(() => PointsAsync(cancellationToken)) : null;
    }

    /// <summary>Notices that wait for a channel.</summary>
    public double Notices(Channel channel) => _notices is { } waiting ? waiting.GetValueOrDefault(channel) : double.NaN;

    /// <summary>Points of a series that wait.</summary>
    public double Points(SeriesKind series) => _points?[series].Count ?? double.NaN;

    /// <summary>Seconds since the oldest of them came in; 0 where none waits.</summary>
    public double OldestSeconds(SeriesKind series) => _points is not { } waiting ? double.NaN
        : waiting[series].Oldest is { } oldest ? (clock.GetCurrentInstant() - oldest).TotalSeconds : 0;

    private async Task<IReadOnlyDictionary<SeriesKind, WaitingEntries>> PointsAsync(CancellationToken cancellationToken) =>
        new Dictionary<SeriesKind, WaitingEntries>
        {
            [SeriesKind.Reading] = await WaitingAsync(SeriesKind.Reading, readings, cancellationToken),
            [SeriesKind.Estimate] = await WaitingAsync(SeriesKind.Estimate, estimates, cancellationToken),
            [SeriesKind.Observation] = await WaitingAsync(SeriesKind.Observation, observations, cancellationToken),
        };

    private async Task<WaitingEntries> WaitingAsync<T>(SeriesKind series, IForwardLog<T> log, CancellationToken cancellationToken) =>
        await log.WaitingAsync(await cursors.ReadAsync(series, cancellationToken), cancellationToken);

    private static async Task<T?> OrNullAsync<T>(Func<Task<T>> read) where T : class
    {
        try
        {
            return await read();
        }
        catch (Exception trouble) when (trouble is not OperationCanceledException)
        {
            // A disk that is away or a senseless row: the loops meet it too, and say so.
            return null;
        }
    }
}
