using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Archives.Taking;

/// <summary>Makes a household of an archive, in a folder where there is none. It is checked whole before anything of it is in its place.</summary>
/// <param name="place">The folder of the new household.</param>
public sealed class HouseholdImport(StorageOptions place)
{
    /// <summary>Takes an archive. Where anything is wrong with it nothing is taken, and all of it is said.</summary>
    /// <param name="path">The zip.</param>
    /// <param name="progress">Told the share of the readings that is done, 0 to 1; null where nobody asks.</param>
    /// <param name="cancellationToken">Gives up; nothing is taken.</param>
    /// <exception cref="IOException">The zip or the folder cannot be read or written, a service runs there, or it holds a household.</exception>
    public ArchiveTroubles Take(string path, Action<double>? progress, CancellationToken cancellationToken)
    {
        using var zip = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        using ServedFolder turn = ServedFolder.Take(place);
        PreparedHousehold.MoveIn(place);
        if (DatabasePair.HoldsAnything(place))
            throw new IOException($"{place.Folder} holds a household already, and an import makes a whole one: nothing was changed. Name an "
                + "empty folder by Storage:Folder (FERMENTWATCH__STORAGE__FOLDER), or move records.db and readings.db away.");
        var troubles = new ArchiveTroubles();
        try
        {
            using ArchiveReader? archive = ArchiveReader.Open(zip, path, troubles);
            if (archive is not null)
                Build(archive, PreparedHousehold.Begin(place), troubles, progress, cancellationToken);
            if (!troubles.Any)
                PreparedHousehold.Settle(place);
        }
        finally
        {
            PreparedHousehold.GiveUp(place);
        }
        return troubles;
    }

    private static void Build(
        ArchiveReader archive, StorageOptions draft, ArchiveTroubles troubles, Action<double>? progress, CancellationToken cancellationToken)
    {
        if (!RecordsDatabase.Knows(archive.Manifest.Records))
        {
            troubles.Add(Manifest.FileName, $"is of a newer version of FermentWatch ('{archive.Manifest.Records}' is not known here). "
                + "Import with that version.");
            return;
        }
        RecordsDatabase.CreateAsOf(draft.RecordsPath, archive.Manifest.Records);
        Within(draft.RecordsPath, (connection, transaction) =>
        {
            new RecordTaker(connection, transaction, archive, troubles).TakeAll(cancellationToken);
            using var ask = new SqlStatement(connection, "SELECT group_concat(Id) FROM household", transaction);
            if (ask.Scalar() as string != archive.Manifest.Household)
                troubles.Add(Manifest.FileName, $"is of household {archive.Manifest.Household}, and the records are not.");
        });
        ReadingSchema.CreateOrCheck(draft.ReadingsPath);
        Within(draft.ReadingsPath, (connection, transaction) =>
        {
            using var readings = new ReadingTaker(connection, transaction, archive, troubles);
            readings.TakeAll(progress, cancellationToken);
        });
        foreach (ArchivedFile other in archive.Unread.ToList())
            if (other.Name.StartsWith(PhotoFile.Folder, StringComparison.Ordinal))
                troubles.Add(other.Name, "is no photo of any observation.");
            else
                archive.Read(other.Name, _ => other.Rows);
        if (troubles.Any)
            return;
        RecordsDatabase.CreateOrUpgrade(draft.RecordsPath, TimeProvider.System);
        DatabasePair.Join(draft);
    }

    private static void Within(string path, Action<SqliteConnection, SqliteTransaction> take)
    {
        using var connection = new SqliteConnection(DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadWrite, pooled: false));
        connection.Open();
        // What names what is checked at the end, with the lines; and what a kill leaves of a draft is thrown away.
        using (var setting = new SqlStatement(connection, "PRAGMA foreign_keys = OFF; PRAGMA journal_mode = TRUNCATE; PRAGMA synchronous = NORMAL;"))
            setting.Run();
        using (SqliteTransaction transaction = connection.BeginTransaction())
        {
            take(connection, transaction);
            transaction.Commit();
        }
        using var back = new SqlStatement(connection, "PRAGMA journal_mode = WAL");
        back.Run();
    }
}
