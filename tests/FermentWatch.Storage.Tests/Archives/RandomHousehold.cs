using FermentWatch.Storage.Archives;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Tests.Archives;

/// <summary>
/// A household of random rows in every table, as odd as the tables let them be, whose rows name each other as the tables ask. What must stay
/// behind bears a mark by which it is found again.
/// </summary>
internal sealed class RandomHousehold
{
    internal const string Secret = "SECRET";

    private static readonly string[] Texts =
        ["", "cabbage", "=HYPERLINK(\"http://x\")", "-5", "two\nlines", "a,b;\"c\"", "Käse 😀", "null", "  ", "tab\there", "\\u0041", "'"];

    private static readonly double[] Numbers = [0, -0.0, 1, 2.25, 1e-300, double.Epsilon, double.MaxValue, -1.0 / 3, double.PositiveInfinity];

    private static readonly long[] Wholes = [0, 1, -1, long.MaxValue, long.MinValue, 1_759_579_200_123, 42];

    private readonly Random _random;
    private readonly Dictionary<string, List<object>> _keys = [];
    private long _counter;

    private RandomHousehold(int seed) => _random = new Random(seed);

    internal static void Make(string folder, int seed)
    {
        var options = new StorageOptions { Folder = folder };
        RecordsDatabase.CreateOrUpgrade(options.RecordsPath, TimeProvider.System);
        ReadingSchema.CreateOrCheck(options.ReadingsPath);
        var household = new RandomHousehold(seed);
        using (SqliteConnection records = Open(options.RecordsPath))
        using (SqliteTransaction transaction = records.BeginTransaction())
        {
            foreach (string table in HouseholdTables.Taken.Select(each => each.Name).Concat(HouseholdTables.LeftOut.Keys))
                household.Fill(records, transaction, table);
            transaction.Commit();
        }
        using (SqliteConnection readings = Open(options.ReadingsPath))
        using (SqliteTransaction transaction = readings.BeginTransaction())
        {
            household.FillReadings(readings, transaction);
            transaction.Commit();
        }
        DatabasePair.Join(options);
    }

    private void Fill(SqliteConnection connection, SqliteTransaction transaction, string table)
    {
        using var erase = new SqlStatement(connection, $"DELETE FROM \"{table}\"", transaction);
        erase.Run();
        int rows = table is "household" or "facts_revision" ? 1 : _random.Next(0, 6);
        var columns = Columns(connection, transaction, table);
        string names = string.Join(", ", columns.Select(column => $"\"{column.Name}\""));
        using var insert = new SqlStatement(connection,
            $"INSERT OR IGNORE INTO \"{table}\"({names}) VALUES({string.Join(", ", columns.Select((_, place) => $"${place + 1}"))})", transaction);
        for (int row = 0; row < rows; row++)
        {
            object?[] values = [.. columns.Select(column => Value(table, column))];
            if (values.Zip(columns).All(each => each.First is not null || !each.Second.NotNull) && insert.Run(values) == 1)
                Keys(table).Add(values[columns.FindIndex(column => column.IsKey)]!);
        }
    }

    private object? Value(string table, Column column)
    {
        if (column.Parent is { } parent)
            return Keys(parent).Count == 0 || (!column.NotNull && _random.Next(3) == 0) ? null : Keys(parent)[_random.Next(Keys(parent).Count)];
        if (!column.NotNull && !column.IsKey && _random.Next(3) == 0)
            return null;
        bool isNumber = column.IsKey || column.Name is "Key" or "Number" or "Position";
        return column.Type switch
        {
            "INTEGER" when column.Name == "Channel" => _random.Next(1, 5),
            "INTEGER" => isNumber ? ++_counter : _random.NextInt64(20) < 7 ? Wholes[_random.Next(Wholes.Length)] : _random.Next(0, 9),
            "REAL" => _random.Next(2) == 0 ? Numbers[_random.Next(Numbers.Length)] : _random.NextDouble() * 10,
            "BLOB" => table == "photo" ? Bytes() : System.Text.Encoding.UTF8.GetBytes(Secret),
            _ => Text(table, column),
        };
    }

    private string Text(string table, Column column)
    {
        if (column.IsKey)
            return NewId();
        bool isSecret = HouseholdTables.LeftOut.ContainsKey(table)
            || column.Name is "PasswordHash" or "SecurityStamp" or "ConcurrencyStamp" or "Secret" or "Email" or "PhoneNumber";
        return $"{(isSecret ? Secret : Texts[_random.Next(Texts.Length)])}{++_counter}";
    }

    private void FillReadings(SqliteConnection connection, SqliteTransaction transaction)
    {
        using var insert = new SqlStatement(connection, "INSERT OR IGNORE INTO reading VALUES($1, $2, $3, $4, $5, $6, $7, $8)", transaction);
        for (int row = _random.Next(200); row > 0; row--)
            insert.Run(_random.Next(1, 4), _random.Next(1, 6), _random.Next(10) == 0 ? Wholes[_random.Next(Wholes.Length)]
                : 1_759_579_200_000 + _random.NextInt64(864_000_000), Numbers[_random.Next(Numbers.Length - 1)], _random.NextInt64(2_000_000_000_000),
                _random.Next(1, 5), _random.Next(0, 12), row);
    }

    private byte[] Bytes()
    {
        byte[] bytes = new byte[_random.Next(1, 3000)];
        _random.NextBytes(bytes);
        return bytes;
    }

    private string NewId()
    {
        byte[] bytes = new byte[16];
        _random.NextBytes(bytes);
        return new Guid(bytes).ToString().ToUpperInvariant();
    }

    private List<object> Keys(string table) => _keys.TryGetValue(table, out List<object>? keys) ? keys : _keys[table] = [];

    private static List<Column> Columns(SqliteConnection connection, SqliteTransaction transaction, string table)
    {
        using var parents = new SqlStatement(connection, "SELECT \"from\", \"table\" FROM pragma_foreign_key_list($1)", transaction);
        var of = parents.Rows(row => (From: row.GetString(0), Table: row.GetString(1)), default, table)
            .ToDictionary(each => each.From, each => each.Table);
        using var ask = new SqlStatement(connection, "SELECT name, type, \"notnull\", pk FROM pragma_table_info($1)", transaction);
        return ask.Rows(row => new Column(row.GetString(0), row.GetString(1), row.GetInt32(2) == 1, row.GetInt32(3) > 0,
            of.GetValueOrDefault(row.GetString(0))), default, table);
    }

    private static SqliteConnection Open(string path)
    {
        var connection = new SqliteConnection(DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadWrite, pooled: false));
        connection.Open();
        return connection;
    }

    private sealed record Column(string Name, string Type, bool NotNull, bool IsKey, string? Parent);
}
