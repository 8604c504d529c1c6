using FermentWatch.Kitchen.Readings;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace FermentWatch.Storage.Readings;

/// <summary>One row of the table of readings, as it is read.</summary>
internal static class ReadingRow
{
    /// <summary>What a query must select first.</summary>
    internal const string Columns = "sensor, quantity, value, instant_ms, received_ms, time_source, verdict";

    /// <summary>How many those are: the place of the next column.</summary>
    internal const int ColumnCount = 7;

    /// <summary>The first and the last millisecond that an instant can name.</summary>
    internal static readonly long FirstMs = Instant.MinValue.ToUnixTimeMilliseconds(), LastMs = Instant.MaxValue.ToUnixTimeMilliseconds();

    internal static JudgedReading Read(SqliteDataReader row) => new(
        new Reading(
            row.GetInt32(0), (Quantity)row.GetInt32(1), row.GetDouble(2), At(row, 3), At(row, 4), (TimeSource)row.GetInt32(5)),
        (Verdict)row.GetInt32(6));

    internal static Instant At(SqliteDataReader row, int column) =>
        Instant.FromUnixTimeMilliseconds(Math.Clamp(row.GetInt64(column), FirstMs, LastMs));
}
