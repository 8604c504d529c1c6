using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage;

/// <summary>
/// The two files belong together: readings.db files what it keeps under keys that only records.db gives. Each bears the household's id,
/// and half a pair, or the halves of two, are refused: a new half beside an old one would give a new sensor an old one's readings.
/// </summary>
internal static class DatabasePair
{
    private const string SomeRecord = "SELECT 1 FROM jar UNION ALL SELECT 1 FROM sensor UNION ALL SELECT 1 FROM AspNetUsers";
    private const string StartAnew = "To start anew, move both files away.";

    /// <summary>Refuses what does not belong together. Files that hold nothing yet are nobody's and may be taken.</summary>
    /// <exception cref="DatabaseRefusedException">One file is missing while the other holds something, or they are of two households.</exception>
    internal static void Check(StorageOptions options)
    {
        bool records = File.Exists(options.RecordsPath), readings = File.Exists(options.ReadingsPath);
        if (records && !readings && HasRecords(options.RecordsPath))
            throw new DatabaseRefusedException(options.RecordsPath,
                $"the readings that belong to it are missing. Put {options.ReadingsPath} back, or restore both files from one backup. {StartAnew}");
        if (readings && !records && HasReadings(options.ReadingsPath))
            throw new DatabaseRefusedException(options.ReadingsPath,
                $"the records that belong to it are missing. Put {options.RecordsPath} back, or restore both files from one backup. {StartAnew}");
    }

    /// <summary>Makes two files that are whole and of this version a pair; a log that holds nothing, or is older than pairs are, joins the
    /// records.</summary>
    /// <exception cref="DatabaseRefusedException">They are of two households.</exception>
    internal static void Join(StorageOptions options)
    {
        (string household, string? pair) = RefuseStrangers(options);
        if (pair == household)
            return;
        using SqliteConnection connection = Open(options.ReadingsPath);
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "UPDATE state SET pair = $1";
        command.Parameters.AddWithValue("$1", household);
        command.ExecuteNonQuery();
    }

    /// <summary>Refuses two files that are of two households, and gives the ids that they bear. Changes nothing.</summary>
    /// <exception cref="DatabaseRefusedException">They are.</exception>
    internal static (string Household, string? Pair) RefuseStrangers(StorageOptions options)
    {
        string household = Text(options.RecordsPath, "SELECT Id FROM household LIMIT 1") ?? "";
        string? pair = Text(options.ReadingsPath, "SELECT pair FROM state");
        return pair is null || pair == household || !HasReadings(options.ReadingsPath) ? (household, pair)
            : throw new DatabaseRefusedException(options.ReadingsPath,
                $"it belongs to other records than those in {options.RecordsPath}. Restore both files from one backup. {StartAnew}");
    }

    /// <summary>Whether there is a household, or half of one, in the folder.</summary>
    /// <exception cref="DatabaseRefusedException">What is there is no file of ours, or damaged: nobody may take its place.</exception>
    internal static bool HoldsAnything(StorageOptions options) =>
        (DatabaseFile.Inspect(options.RecordsPath, RecordsDatabase.ApplicationId)
            && Text(options.RecordsPath, $"SELECT count(*) FROM ({SomeRecord} UNION ALL SELECT 1 FROM place)") != "0")
        || (DatabaseFile.Inspect(options.ReadingsPath, ReadingSchema.ApplicationId)
            && Text(options.ReadingsPath, "SELECT count(*) FROM (SELECT 1 FROM reading LIMIT 1)") != "0");

    private static bool HasRecords(string path) =>
        Text(path, $"{SomeRecord} LIMIT 1") is not null;

    private static bool HasReadings(string path) => Text(path, "SELECT 1 FROM reading LIMIT 1") is not null;

    /// <summary>The first value of a query; null where there is none. A file that cannot be asked is left to the checks of its own.</summary>
    private static string? Text(string path, string sql)
    {
        try
        {
            using SqliteConnection connection = Open(path);
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = sql;
            return command.ExecuteScalar() is { } value and not DBNull ? value.ToString() : null;
        }
        catch (SqliteException)
        {
            return null;
        }
    }

    private static SqliteConnection Open(string path)
    {
        var connection = new SqliteConnection(DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadWrite, pooled: false));
        connection.Open();
        return connection;
    }
}

/// <summary>
/// A database file is not ours, not whole, or from a newer version. It was left as it was found; the message says what is
/// wrong with it and what to do, in words for the person who starts the service.
/// </summary>
public sealed class DatabaseRefusedException(string path, string reason, Exception? cause = null)
    : Exception($"{path} was refused and left as it is: {reason}", cause)
{
    /// <summary>The file that was refused.</summary>
    public string DatabasePath { get; } = path;
}
