using FermentWatch.Storage.Readings;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Archives.Taking;

/// <summary>Takes the tables of an archive into records that hold nothing yet, in one transaction.</summary>
internal sealed class RecordTaker(SqliteConnection connection, SqliteTransaction transaction, ArchiveReader archive, ArchiveTroubles troubles)
{
    private const int LargestPhoto = 16 << 20;

    internal void TakeAll(CancellationToken cancellationToken)
    {
        var shapes = HouseholdTables.Taken.Select(table => TableShape.Of(connection, transaction, table))
            .Where(shape => shape.Taken.Count > 0).ToList();
        foreach (TableShape shape in shapes)
            Run($"DELETE FROM \"{shape.Table.Name}\"");
        foreach (TableShape shape in shapes)
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (archive.Find(shape.Table.Json) is not null)
                archive.Read(shape.Table.Json, stream => Take(stream, shape));
            else
                troubles.Add(shape.Table.Json, "is missing.");
        }
        CheckReferences(shapes);
    }

    private long? Take(Stream stream, TableShape shape)
    {
        var lines = new RecordLines(stream);
        using var insert = new SqlStatement(connection, shape.Insert, transaction);
        long rows = 0;
        while (lines.TryRead(out ReadOnlyMemory<byte> line))
        {
            if (line.Length <= 1)
                continue;
            rows++;
            ReadOnlyMemory<byte> row = line.Span[^1] == (byte)',' ? line[..^1] : line;
            if (RowJson.Read(row, shape, out string wrong) is not { } values)
                troubles.Add(shape.Table.Json, lines.Number, $"{wrong}.");
            else if (TakeRow(insert, shape, values, lines.Number) is { } refused)
                troubles.Add(shape.Table.Json, lines.Number, refused);
        }
        return rows;
    }

    private string? TakeRow(SqlStatement insert, TableShape shape, object?[] values, long line)
    {
        for (int place = 0; place < values.Length; place++)
            if (shape.Taken[place].Type == "BLOB" && values[place] is string file)
            {
                byte[]? photo = PhotoOf(file);
                if (photo is null)
                    return $"its photo '{file}' is not in the zip.";
                values[place] = photo;
            }
        try
        {
            insert.Run(shape.IsNumbered ? values : [.. values, line]);
            return null;
        }
        catch (SqliteException trouble)
        {
            return $"cannot be kept ({trouble.Message.TrimEnd('.')}).";
        }
    }

    private byte[]? PhotoOf(string file)
    {
        byte[]? photo = null;
        if (archive.Find(file) is { Bytes: <= LargestPhoto })
            archive.Read(file, stream =>
            {
                using var bytes = new MemoryStream();
                stream.CopyTo(bytes);
                photo = bytes.ToArray();
                return null;
            });
        return photo;
    }

    /// <summary>Each row that names another must find it. Rows are numbered by their lines, unless their key is their number.</summary>
    private void CheckReferences(List<TableShape> shapes)
    {
        using var check = new SqlStatement(connection, "PRAGMA foreign_key_check", transaction);
        check.Each(row =>
        {
            TableShape? shape = shapes.Find(each => each.Table.Name == row.GetString(0));
            string names = $"names one of {row.GetString(2)} that is not there.";
            if (shape is { IsNumbered: false })
                troubles.Add(shape.Table.Json, row.GetInt64(1), names);
            else
                troubles.Add(shape?.Table.Json ?? row.GetString(0), FormattableString.Invariant($"row {row.GetValue(1)} {names}"));
        });
    }

    private void Run(string sql)
    {
        using var statement = new SqlStatement(connection, sql, transaction);
        statement.Run();
    }
}
