using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>The table of means, as the writer sees it.</summary>
internal sealed class MeanRows(WriteSession session)
{
    private readonly SqlStatement _counting = session.Prepare(
        $"""
        SELECT instant_ms, value FROM reading
        WHERE sensor = $1 AND quantity = $2 AND instant_ms >= $3 AND instant_ms < $4 AND verdict = {(int)Verdict.Counts}
        ORDER BY instant_ms
        """);
    private readonly SqlStatement _delete = session.Prepare(
        "DELETE FROM mean WHERE span = $1 AND sensor = $2 AND quantity = $3 AND start_ms = $4");
    private readonly SqlStatement _write = session.Prepare(
        $"""
        INSERT INTO mean(span, sensor, quantity, start_ms, value, minimum, maximum, count, revision)
        VALUES($1, $2, $3, $4, $5, $6, $7, $8, (SELECT means_revision + 1 FROM state)) {RollUp.Replace}
        """);
    private readonly SqlStatement _rollUp = session.Prepare(RollUp.OfOneBucket);
    private readonly SqlStatement _forgetEmpty = session.Prepare(RollUp.ForgetEmpty);

    /// <summary>Computes again the means of every bucket that holds one of the instants.</summary>
    /// <returns>Whether a mean of a quarter hour is other than before.</returns>
    internal bool Renew(int sensorKey, Quantity quantity, IEnumerable<long> instantsMs)
    {
        bool quarterChanged = false;
        var hours = instantsMs.GroupBy(instant => Bucket.StartMs(MeanSpan.Hour, instant)).ToList();
        foreach (var hour in hours)
        {
            var readings = _counting.Rows(
                row => (row.GetInt64(0), row.GetDouble(1)), CancellationToken.None,
                sensorKey, (int)quantity, hour.Key, hour.Key + Bucket.LengthMs(MeanSpan.Hour));
            foreach (var span in Bucket.OfReadings)
            {
                var means = Bucket.Means(span, readings);
                foreach (long startMs in hour.Select(instant => Bucket.StartMs(span, instant)).Distinct())
                    quarterChanged |= Write(span, sensorKey, quantity, startMs, means) && span == MeanSpan.QuarterHour;
            }
        }

        foreach (var (span, of) in Bucket.OfRollUps)
            foreach (long startMs in hours.Select(hour => Bucket.StartMs(span, hour.Key)).Distinct())
                WriteRollUp(span, of, sensorKey, quantity, startMs);
        return quarterChanged;
    }

    private bool Write(MeanSpan span, int sensorKey, Quantity quantity, long startMs, List<ReadingMean> means)
    {
        var start = Instant.FromUnixTimeMilliseconds(startMs);
        var mean = means.Find(candidate => candidate.Start == start);
        int changed = mean is null
            ? _delete.Run((int)span, sensorKey, (int)quantity, startMs)
            : _write.Run((int)span, sensorKey, (int)quantity, startMs, mean.Value, mean.Minimum, mean.Maximum, mean.Count);
        return changed > 0;
    }

    private void WriteRollUp(MeanSpan span, MeanSpan of, int sensorKey, Quantity quantity, long startMs)
    {
        object?[] bucket = [(int)span, sensorKey, (int)quantity, startMs, (int)of, startMs + Bucket.LengthMs(span)];
        if (_rollUp.Run(bucket) == 0)
            _forgetEmpty.Run(bucket);
    }
}
