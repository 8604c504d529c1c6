using System.Globalization;
using CsvHelper;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Archives.Taking;

/// <summary>Takes the readings of an archive, with their verdicts, into a log that holds nothing yet, in one transaction.</summary>
internal sealed class ReadingTaker(SqliteConnection connection, SqliteTransaction transaction, ArchiveReader archive, ArchiveTroubles troubles)
    : IDisposable
{
    private static readonly CsvReaderOptions Form = new() { Separator = ',', TrackLineNumbers = true, MaxRecordSize = 1 << 16 };

    private readonly SqlStatement _insert = new(connection,
        """
        INSERT INTO reading(sensor, quantity, instant_ms, value, received_ms, time_source, verdict, seq)
        VALUES($1, $2, $3, $4, $5, $6, $7, $8)
        """, transaction);
    private readonly TakenSums _sums = new(connection, transaction);
    private long _seq;

    /// <summary>Takes every file of readings.</summary>
    internal void TakeAll(Action<double>? progress, CancellationToken cancellationToken)
    {
        var files = archive.Unread.Select(file => (file.Rows, File: ReadingFile.Find(file.Name))).Where(each => each.File is not null).ToList();
        long total = Math.Max(1, files.Sum(each => each.Rows ?? 0));
        foreach ((_, ReadingFile? file) in files)
            archive.Read(file!.Name, stream => Take(stream, file, () =>
            {
                cancellationToken.ThrowIfCancellationRequested();
                progress?.Invoke(Math.Min(1, _seq / (double)total));
            }));
        _sums.Finish();
    }

    public void Dispose()
    {
        _insert.Dispose();
        _sums.Dispose();
    }

    private long? Take(Stream stream, ReadingFile file, Action now)
    {
        long rows = 0;
        long? before = null;
        try
        {
            using CsvReader csv = CsvReader.Create(stream, Form, leaveOpen: true);
            csv.ReadHeader();
            if (!csv.Headers.SequenceEqual(file.Header))
                troubles.Add(file.Name, 1, $"the columns {string.Join(',', file.Header)} would be right.");
            for (; csv.Read(); rows++)
            {
                if (rows % 10_000 == 0)
                    now();
                if (ReadingLine.Read(csv) is not { } line)
                    troubles.Add(file.Name, csv.LineNumber, "is no reading; a time, a number, a time and two words would be right.");
                else if (line.InstantMs <= before)
                    troubles.Add(file.Name, csv.LineNumber, "does not come after the line before it.");
                else
                {
                    before = line.InstantMs;
                    Take(file, line);
                }
            }
        }
        catch (CsvFormatException trouble)
        {
            troubles.Add(file.Name, trouble.LineNumber, trouble.Message);
        }
        _sums.EndSeries();
        return rows;
    }

    private void Take(ReadingFile file, ReadingLine line)
    {
        _insert.Run(file.SensorKey, file.Quantity, line.InstantMs, line.Value, line.ReceivedMs, line.TimeSource, line.Verdict, ++_seq);
        _sums.Add(file, line);
    }
}

/// <summary>One line of a file of readings.</summary>
internal readonly record struct ReadingLine(long InstantMs, double Value, long ReceivedMs, long TimeSource, long Verdict)
{
    private const int Fields = 5;

    /// <summary>The line that a reader stands on; null where it is none of ours.</summary>
    internal static ReadingLine? Read(CsvReader csv) =>
        csv.FieldCount == Fields && StoredTime.TryRead(csv.GetSpan(0), out long measured)
            && double.TryParse(csv.GetSpan(1), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            && StoredTime.TryRead(csv.GetSpan(2), out long received)
            && Number<TimeSource>(csv.GetString(3)) is { } source && Number<Verdict>(csv.GetString(4)) is { } verdict
            ? new ReadingLine(measured, value, received, source, verdict) : null;

    private static long? Number<T>(string word)
        where T : struct, Enum => Enum.TryParse(word, out T value) ? Convert.ToInt64(value, null) : null;
}
