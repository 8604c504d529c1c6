using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Records.Conversions;
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

    internal static JudgedReading Read(SqliteDataReader row) => new(
        new Reading(
            row.GetInt32(0), (Quantity)row.GetInt32(1), row.GetDouble(2), At(row, 3), At(row, 4), (TimeSource)row.GetInt32(5)),
        (Verdict)row.GetInt32(6));

    internal static Instant At(SqliteDataReader row, int column) => InstantConverter.Read(row.GetInt64(column));
}
