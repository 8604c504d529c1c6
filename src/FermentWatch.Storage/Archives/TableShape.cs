using System.Text.Json;
using FermentWatch.Storage.Readings;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Archives;

/// <summary>The columns of one table that are taken along, as the file itself says them.</summary>
internal sealed class TableShape
{
    private const string Columns = "SELECT name, type, pk FROM pragma_table_info($1) ORDER BY cid";

    private TableShape(TakenTable table, IReadOnlyList<ShapeColumn> taken)
    {
        Table = table;
        Taken = taken;
    }

    internal TakenTable Table { get; }

    /// <summary>The columns, in the order of the table.</summary>
    internal IReadOnlyList<ShapeColumn> Taken { get; }

    /// <summary>Whether the key is a number that SQLite also uses to number the rows.</summary>
    internal bool IsNumbered => Taken.Count(column => column.KeyOrder > 0) == 1 && Taken.Single(column => column.KeyOrder > 0).Type == "INTEGER";

    /// <summary>Place of the column that is the key, or the first of them.</summary>
    internal int KeyPlace => Taken.Index().First(column => column.Item.KeyOrder == 1).Index;

    /// <summary>All rows by key, so that the same rows give the same file. Of a photo no more than that it is there.</summary>
    internal string Select =>
        $"SELECT {string.Join(", ", Taken.Select(column => column.Type == "BLOB" ? "x''" : Quoted(column)))} "
        + $"FROM \"{Table.Name}\" WHERE {Table.Rows} "
        + $"ORDER BY {string.Join(", ", Taken.Where(column => column.KeyOrder > 0).OrderBy(column => column.KeyOrder).Select(Quoted))}";

    /// <summary>One row: its columns as $1, $2 and so on; behind them its number where the key is none.</summary>
    internal string Insert
    {
        get
        {
            var names = Taken.Select(Quoted).ToList();
            var values = Enumerable.Range(1, names.Count).Select(place => $"${place}").ToList();
            if (!IsNumbered)
            {
                names.Add("rowid");
                values.Add($"${names.Count}");
            }
            if (Table.Anew is { } anew)
            {
                names.Add(anew.Column);
                values.Add(anew.Value);
            }
            return $"INSERT INTO \"{Table.Name}\"({string.Join(", ", names)}) VALUES({string.Join(", ", values)})";
        }
    }

    internal static TableShape Of(SqliteConnection connection, SqliteTransaction? moment, TakenTable table)
    {
        using var ask = new SqlStatement(connection, Columns, moment);
        var all = ask.Rows(row => new ShapeColumn(row.GetString(0), row.GetString(1), row.GetInt32(2)), CancellationToken.None, table.Name);
        return new TableShape(table, [.. all.Where(column => table.Columns?.Contains(column.Name) ?? true)]);
    }

    private static string Quoted(ShapeColumn column) => $"\"{column.Name}\"";
}

/// <summary>A column.</summary>
/// <param name="Name">Its name in the table.</param>
/// <param name="Type">INTEGER, REAL, TEXT or BLOB.</param>
/// <param name="KeyOrder">Its place in the key, from 1; 0 where it is no part of it.</param>
internal sealed record ShapeColumn(string Name, string Type, int KeyOrder)
{
    /// <summary>Its name in the files: <c>entered_at</c>.</summary>
    internal string Title { get; } = JsonNamingPolicy.SnakeCaseLower.ConvertName(Name.Replace("_", "", StringComparison.Ordinal));
}
