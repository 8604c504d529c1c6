using FermentWatch.Kitchen.Forwarding;

namespace FermentWatch.Export.Tests.Doubles;

/// <summary>Cursors that outlive the forwarder.</summary>
internal sealed class CursorsInMemory : IForwardCursors
{
    private readonly Dictionary<SeriesKind, long> _places = [];

    public List<(SeriesKind Series, NotForwarded Point)> LeftOut { get; } = [];

    public long this[SeriesKind series]
    {
        get => _places.GetValueOrDefault(series);
        set => _places[series] = value;
    }

    public Task<long> ReadAsync(SeriesKind series, CancellationToken cancellationToken) => Task.FromResult(this[series]);

    public Task MoveAsync(SeriesKind series, long cursor, IReadOnlyList<NotForwarded> leftOut, CancellationToken cancellationToken)
    {
        this[series] = cursor;
        LeftOut.AddRange(leftOut.Select(point => (series, point)));
        return Task.CompletedTask;
    }

    public Task<IReadOnlyList<NotForwardedCount>> LeftOutAsync(CancellationToken cancellationToken) => throw new NotSupportedException();
}
