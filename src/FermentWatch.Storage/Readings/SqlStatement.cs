using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Readings;

/// <summary>One SQL statement with parameters $1, $2 and so on, prepared once and run many times.</summary>
internal sealed class SqlStatement : IDisposable
{
    private readonly SqliteCommand _command;

    internal SqlStatement(SqliteConnection connection, string sql, SqliteTransaction? transaction = null)
    {
        _command = connection.CreateCommand();
        _command.CommandText = sql;
        _command.Transaction = transaction;
    }

    /// <summary>Runs it and returns how many rows it changed.</summary>
    internal int Run(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        return _command.ExecuteNonQuery();
    }

    /// <summary>Runs it and returns the first column of the first row, or null where there is no row or no value.</summary>
    internal object? Scalar(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        object? value = _command.ExecuteScalar();
        return value is DBNull ? null : value;
    }

    /// <summary>Runs it and returns every row.</summary>
    internal List<T> Rows<T>(Func<SqliteDataReader, T> map, CancellationToken cancellationToken, params ReadOnlySpan<object?> values)
    {
        Bind(values);
        var rows = new List<T>();
        using var reader = _command.ExecuteReader();
        while (reader.Read())
        {
            cancellationToken.ThrowIfCancellationRequested();
            rows.Add(map(reader));
        }

        return rows;
    }

    /// <summary>Runs it and hands over every row.</summary>
    internal void Each(Action<SqliteDataReader> take, params ReadOnlySpan<object?> values)
    {
        Bind(values);
        using var reader = _command.ExecuteReader();
        while (reader.Read())
            take(reader);
    }

    public void Dispose() => _command.Dispose();

    private void Bind(ReadOnlySpan<object?> values)
    {
        for (int index = 0; index < values.Length; index++)
        {
            if (index == _command.Parameters.Count)
                _command.Parameters.Add(new SqliteParameter { ParameterName = $"${index + 1}" });
            _command.Parameters[index].Value = values[index] ?? DBNull.Value;
        }
    }
}
