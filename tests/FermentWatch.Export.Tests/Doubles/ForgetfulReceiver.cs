using FermentWatch.Export.Receiving;
using InfluxDB.Client.Writes;

namespace FermentWatch.Export.Tests.Doubles;

/// <summary>A receiver that says it has points and writes them to its disk only a while later, as real ones do.</summary>
internal sealed class ForgetfulReceiver(TimeProvider time, TimeSpan writesAfter) : IPointReceiver
{
    private readonly List<(long TakenAt, string Line)> _inMemory = [];
    private readonly HashSet<string> _onDisk = [];
    private long _connection;
    private bool _connected;

    /// <summary>Every call, with the lines it carried.</summary>
    public List<IReadOnlyList<string>> Calls { get; } = [];

    /// <summary>How each call that is not simply taken is answered; null takes it.</summary>
    public Func<IReadOnlyList<string>, WriteOutcome?> Answer { get; set; } = _ => null;

    /// <summary>Closes the connection after each answer.</summary>
    public bool KeepsNoConnection { get; set; }

    /// <summary>What is there now, on disk or in memory.</summary>
    public IEnumerable<string> Stored => _onDisk.Union(_inMemory.Select(entry => entry.Line)).Order(StringComparer.Ordinal);

    /// <summary>Dies without a word and is there again.</summary>
    public void KillAndStart()
    {
        Settle();
        _inMemory.Clear();
        _connected = false;
    }

    public Task<WriteOutcome> WriteAsync(IReadOnlyList<PointData> points, CancellationToken cancellationToken)
    {
        Settle();
        List<string> lines = [.. points.Select(point => point.ToLineProtocol())];
        Calls.Add(lines);
        if (!_connected || KeepsNoConnection)
            _connection++;
        _connected = true;
        if (Answer(lines) is { } other)
            return Task.FromResult(other);
        _inMemory.AddRange(lines.Select(line => (time.GetTimestamp(), line)));
        return Task.FromResult(WriteOutcome.Taken(_connection));
    }

    private void Settle()
    {
        foreach ((_, string line) in _inMemory.Where(entry => time.GetElapsedTime(entry.TakenAt) >= writesAfter))
            _onDisk.Add(line);
        _inMemory.RemoveAll(entry => _onDisk.Contains(entry.Line));
    }
}
