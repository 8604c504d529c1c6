using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Readings.Writing;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Archives.Taking;

/// <summary>What a log keeps beside its readings, made while they come in by time: means, counts of verdicts, when each sensor was heard.</summary>
internal sealed class TakenSums(SqliteConnection connection, SqliteTransaction transaction) : IDisposable
{
    private readonly SqlStatement _mean = new(connection,
        """
        INSERT INTO mean(span, sensor, quantity, start_ms, value, minimum, maximum, count, revision)
        VALUES($1, $2, $3, $4, $5, $6, $7, $8, (SELECT means_revision + 1 FROM state))
        """, transaction);
    private readonly List<(long InstantMs, double Value)> _hour = [];
    private readonly Dictionary<(int Sensor, long Verdict), long> _verdicts = [];
    private readonly Dictionary<int, long> _heard = [];
    private (ReadingFile File, long StartMs)? _at;

    /// <summary>Adds the next reading of a series.</summary>
    internal void Add(ReadingFile file, ReadingLine line)
    {
        _verdicts[(file.SensorKey, line.Verdict)] = _verdicts.GetValueOrDefault((file.SensorKey, line.Verdict)) + 1;
        _heard[file.SensorKey] = Math.Max(_heard.GetValueOrDefault(file.SensorKey, long.MinValue), line.ReceivedMs);
        // A time that no calendar can name, in a damaged log: its verdict is mended when the log is opened.
        if (line.Verdict != (long)Verdict.Counts || line.InstantMs < ReadingRow.FirstMs || line.InstantMs > ReadingRow.LastMs)
            return;
        long startMs = Bucket.StartMs(MeanSpan.Hour, line.InstantMs);
        if (_at is { } at && at.StartMs != startMs)
            EndSeries();
        _at = (file, startMs);
        _hour.Add((line.InstantMs, line.Value));
    }

    /// <summary>Writes the means of the hour that was gathered last.</summary>
    internal void EndSeries()
    {
        if (_at is { } at)
            foreach (MeanSpan span in Bucket.OfReadings)
                foreach (ReadingMean mean in Bucket.Means(span, _hour))
                    _mean.Run((int)span, at.File.SensorKey, at.File.Quantity, mean.Start.ToUnixTimeMilliseconds(), mean.Value, mean.Minimum,
                        mean.Maximum, mean.Count);
        _hour.Clear();
        _at = null;
    }

    /// <summary>Writes all that is made of the rest.</summary>
    internal void Finish()
    {
        foreach ((MeanSpan span, MeanSpan of) in Bucket.OfRollUps)
            Run(RollUp.OfAll(span, of));
        foreach (((int sensor, long verdict), long count) in _verdicts)
            Run("INSERT INTO verdict_count VALUES($1, $2, $3)", sensor, verdict, count);
        foreach ((int sensor, long receivedMs) in _heard)
            Run("INSERT INTO heard VALUES($1, $2)", sensor, receivedMs);
        Run("UPDATE state SET means_revision = means_revision + 1");
    }

    public void Dispose() => _mean.Dispose();

    private void Run(string sql, params ReadOnlySpan<object?> values)
    {
        using var statement = new SqlStatement(connection, sql, transaction);
        statement.Run(values);
    }
}
