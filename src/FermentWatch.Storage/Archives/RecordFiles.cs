using System.Buffers;
using System.IO.Compression;
using CsvHelper;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Archives;

/// <summary>Writes the tables of the records as they stand at one moment: each as JSON, to come back from, and as CSV, for spreadsheets.</summary>
internal sealed class RecordFiles(SqliteConnection connection, SqliteTransaction moment, RecordsContext model)
{
    /// <summary>A byte order mark for Excel; text that a spreadsheet would run as a formula is marked as text (ASVS 5.0.0, 1.2.10).</summary>
    private static readonly CsvWriterOptions ForSpreadsheets = new() { WriteByteOrderMark = true, Injection = CsvInjection.Escape };

    /// <summary>Writes every table that is taken along.</summary>
    internal void WriteAll(ArchiveWriter archive, CancellationToken cancellationToken)
    {
        foreach (TakenTable table in HouseholdTables.Taken)
        {
            cancellationToken.ThrowIfCancellationRequested();
            TableShape shape = TableShape.Of(connection, moment, table);
            archive.Add(table.Json, CompressionLevel.Optimal, stream => WriteJson(stream, shape));
            archive.Add(table.Csv, CompressionLevel.Optimal, stream => WriteCsv(stream, shape));
        }
    }

    /// <summary>Writes each photo as a file of its own.</summary>
    internal void WritePhotos(ArchiveWriter archive, CancellationToken cancellationToken)
    {
        using var photos = new SqlStatement(connection, "SELECT ObservationId, Jpeg FROM photo ORDER BY ObservationId", moment);
        photos.Each(row =>
        {
            cancellationToken.ThrowIfCancellationRequested();
            archive.Add(PhotoFile.NameOf(row.GetString(0)), CompressionLevel.NoCompression, stream =>
            {
                stream.Write(row.GetFieldValue<byte[]>(1));
                return null;
            });
        });
    }

    private long? WriteJson(Stream stream, TableShape shape)
    {
        long rows = 0;
        var line = new ArrayBufferWriter<byte>();
        using var select = new SqlStatement(connection, shape.Select, moment);
        stream.Write("[\n"u8);
        select.Each(row =>
        {
            line.ResetWrittenCount();
            line.Write(rows++ == 0 ? ""u8 : ",\n"u8);
            RowJson.Write(line, row, shape);
            stream.Write(line.WrittenSpan);
        });
        stream.Write(rows == 0 ? "]\n"u8 : "\n]\n"u8);
        return rows;
    }

    private long? WriteCsv(Stream stream, TableShape shape)
    {
        long rows = 0;
        IReadOnlyList<ColumnMeaning> columns = ColumnMeaning.Of(shape, model);
        using var select = new SqlStatement(connection, shape.Select, moment);
        using CsvWriter csv = CsvWriter.Create(stream, ForSpreadsheets, leaveOpen: true);
        csv.WriteRecord([.. columns.Select(column => column.Column.Title)]);
        select.Each(row =>
        {
            rows++;
            for (int place = 0; place < columns.Count; place++)
                WriteField(csv, columns[place], row, place, shape);
            csv.EndRecord();
        });
        return rows;
    }

    /// <summary>A number is no text: a minus before it is no formula.</summary>
    private static void WriteField(CsvWriter csv, ColumnMeaning column, SqliteDataReader row, int place, TableShape shape)
    {
        if (row.GetValue(place) is double number)
            csv.WriteField(number);
        else
            csv.WriteField(column.Show(row, place, shape));
    }
}
