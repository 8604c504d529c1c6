using System.Globalization;
using System.IO.Compression;
using System.Text;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Archives;

/// <summary>Writes readings, a file for each sensor and quantity. They are read in parts, so that a slow receiver holds no journal.</summary>
internal sealed class ReadingFiles(SqliteConnection connection)
{
    private const int PartSize = 20_000;

    private const string Series = "SELECT DISTINCT sensor, quantity FROM reading ORDER BY sensor, quantity";

    private const string Part =
        """
        SELECT instant_ms, value, received_ms, time_source, verdict FROM reading
        WHERE sensor = $1 AND quantity = $2 AND instant_ms >= $3 ORDER BY instant_ms LIMIT $4
        """;

    /// <summary>Writes every series that there is when it begins.</summary>
    internal void WriteAll(ArchiveWriter archive, Action<double>? progress, CancellationToken cancellationToken)
    {
        using var ask = new SqlStatement(connection, Series);
        var files = ask.Rows(row => new ReadingFile(row.GetInt32(0), row.GetInt32(1)), cancellationToken);
        long total = Number("SELECT coalesce(sum(count), 0) FROM verdict_count"), written = 0;
        using var part = new SqlStatement(connection, Part);
        foreach (ReadingFile file in files)
            archive.Add(file.Name, CompressionLevel.Fastest, stream => Write(stream, part, file, rows =>
            {
                written += rows;
                progress?.Invoke(Math.Min(1, written / (double)Math.Max(1, total)));
                cancellationToken.ThrowIfCancellationRequested();
            }));
    }

    private static long? Write(Stream stream, SqlStatement part, ReadingFile file, Action<long> wrote)
    {
        long all = 0, rows;
        long last = 0, from = long.MinValue;
        using var text = new StreamWriter(stream, new UTF8Encoding(false), bufferSize: 1 << 16, leaveOpen: true) { NewLine = "\r\n" };
        text.WriteLine(string.Join(',', file.Header));
        do
        {
            rows = 0;
            part.Each(row =>
            {
                rows++;
                last = row.GetInt64(0);
                WriteLine(text, row);
            }, file.SensorKey, file.Quantity, from, PartSize);
            all += rows;
            from = last == long.MaxValue ? last : last + 1;
            wrote(rows);
        }
        while (rows == PartSize && last < long.MaxValue);
        return all;
    }

    private static void WriteLine(StreamWriter text, SqliteDataReader row)
    {
        text.Write(StoredTime.Text(row.GetInt64(0)));
        text.Write(',');
        text.Write(row.GetDouble(1).ToString("R", CultureInfo.InvariantCulture));
        text.Write(',');
        text.Write(StoredTime.Text(row.GetInt64(2)));
        text.Write(',');
        text.Write(ReadingFile.WordOf<TimeSource>(row.GetInt64(3)));
        text.Write(',');
        text.WriteLine(ReadingFile.WordOf<Verdict>(row.GetInt64(4)));
    }

    private long Number(string sql)
    {
        using var ask = new SqlStatement(connection, sql);
        return (long)ask.Scalar()!;
    }
}
