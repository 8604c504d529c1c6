using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Tests;

/// <summary>A folder that goes with the test.</summary>
public sealed class TemporaryFolder : IDisposable
{
    private readonly string _path = Directory.CreateTempSubdirectory("fermentwatch-storage-").FullName;

    public string File(string name) => Path.Combine(_path, name);

    public string Root => _path;

    public void Dispose() => Directory.Delete(_path, recursive: true);

    /// <summary>Runs SQL on a file as any other program might.</summary>
    public static object? Sql(string path, string sql)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
