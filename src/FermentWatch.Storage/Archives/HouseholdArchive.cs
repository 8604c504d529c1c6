using System.IO.Compression;
using System.Text;
using FermentWatch.Kitchen.Archives;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Archives;

/// <inheritdoc cref="IHouseholdArchive"/>
/// <remarks>Changes nothing in the folder, whether the service runs on it, stands still or was killed.</remarks>
public sealed class HouseholdArchive(StorageOptions options) : IHouseholdArchive
{
    /// <inheritdoc/>
    /// <exception cref="DatabaseRefusedException">The databases are not of this version, or no databases of ours.</exception>
    public Task WriteAsync(Stream to, bool withReadings, Action<double>? progress, CancellationToken cancellationToken) => Task.Run(() =>
    {
        try
        {
            Write(to, withReadings, progress, cancellationToken);
        }
        catch (SqliteException trouble)
        {
            throw new IOException($"{options.Folder} could not be read: {trouble.Message}", trouble);
        }
    }, cancellationToken);

    private void Write(Stream to, bool withReadings, Action<double>? progress, CancellationToken cancellationToken)
    {
        string last = LastStep(options.RecordsPath);
        using var archive = new ArchiveWriter(to);
        using RecordsContext model = RecordsConnection.Context(options.RecordsPath, SqliteOpenMode.ReadOnly);
        string household;
        using (SqliteConnection records = DatabaseLook.Open(options.RecordsPath))
        using (SqliteTransaction moment = records.BeginTransaction(deferred: true))
        {
            using (var ask = new SqlStatement(records, "SELECT Id FROM household LIMIT 1", moment))
                household = (string)ask.Scalar()!;
            TableShape[] shapes = [.. HouseholdTables.Taken.Select(table => TableShape.Of(records, moment, table))];
            archive.Add(ArchiveReadme.FileName, CompressionLevel.Optimal, stream =>
            {
                stream.Write(Encoding.UTF8.GetBytes(ArchiveReadme.Of(shapes, model)));
                return null;
            });
            var files = new RecordFiles(records, moment, model);
            files.WriteAll(archive, cancellationToken);
            files.WritePhotos(archive, cancellationToken);
        }
        if (withReadings)
            using (SqliteConnection readings = DatabaseLook.Open(options.ReadingsPath))
                new ReadingFiles(readings).WriteAll(archive, progress, cancellationToken);
        archive.Close(new Manifest(Manifest.CurrentFormat, household, last, withReadings, []));
    }

    /// <summary>The last step by which the tables came to be, which must be the last there is.</summary>
    private static string LastStep(string path)
    {
        if (!DatabaseFile.Inspect(path, RecordsDatabase.ApplicationId))
            throw new DatabaseRefusedException(path, "it is not there.");
        using RecordsContext model = RecordsConnection.Context(path, SqliteOpenMode.ReadOnly);
        string known = model.Database.GetMigrations().Last();
        using SqliteConnection connection = DatabaseLook.Open(path);
        using var ask = new SqlStatement(connection, "SELECT MigrationId FROM __EFMigrationsHistory ORDER BY MigrationId DESC LIMIT 1");
        return ask.Scalar() as string == known ? known
            : throw new DatabaseRefusedException(path,
                "it was written by another version of FermentWatch. Start this version's service on it once, or export with that version.");
    }
}
