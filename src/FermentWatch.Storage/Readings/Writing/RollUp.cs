using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>Longer means made of shorter ones, in SQL: each weighs as much as it holds readings.</summary>
internal static class RollUp
{
    /// <summary>Writes over what stood, unless it is the same.</summary>
    internal const string Replace =
        """
        ON CONFLICT(span, sensor, quantity, start_ms) DO UPDATE
        SET value = excluded.value, minimum = excluded.minimum, maximum = excluded.maximum, count = excluded.count,
            revision = excluded.revision
        WHERE value <> excluded.value OR minimum <> excluded.minimum OR maximum <> excluded.maximum OR count <> excluded.count
        """;

    private const string Columns = "mean(span, sensor, quantity, start_ms, value, minimum, maximum, count, revision)";
    private const string Together =
        "total(value * count) / sum(count), min(minimum), max(maximum), sum(count), (SELECT means_revision + 1 FROM state)";
    private const string Parts = "span = $5 AND sensor = $2 AND quantity = $3 AND start_ms >= $4 AND start_ms < $6";

    /// <summary>Writes one bucket: $1 its span, $2 sensor, $3 quantity, $4 its start, $5 the span it is made of, $6 its end.</summary>
    internal const string OfOneBucket =
        $"INSERT INTO {Columns} SELECT $1, $2, $3, $4, {Together} FROM mean WHERE {Parts} HAVING count(*) > 0 {Replace}";

    /// <summary>Deletes a bucket of which nothing is left; the same parameters.</summary>
    internal const string ForgetEmpty =
        $"DELETE FROM mean WHERE span = $1 AND sensor = $2 AND quantity = $3 AND start_ms = $4 AND NOT EXISTS (SELECT 1 FROM mean WHERE {Parts})";

    /// <summary>Writes every bucket of a span into a log that has none of them yet.</summary>
    internal static string OfAll(MeanSpan span, MeanSpan of)
    {
        long length = Bucket.LengthMs(span);
        return $"""
            INSERT INTO {Columns} SELECT {(int)span}, sensor, quantity, bucket, {Together}
            FROM (SELECT *, start_ms - ((start_ms % {length}) + {length}) % {length} AS bucket FROM mean WHERE span = {(int)of})
            GROUP BY sensor, quantity, bucket;
            """;
    }
}
