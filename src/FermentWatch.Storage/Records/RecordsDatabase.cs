using FermentWatch.Kitchen.Households;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace FermentWatch.Storage.Records;

/// <summary>The file of the records: how a new one is made, an older one brought up to date, and any other refused.</summary>
internal static class RecordsDatabase
{
    /// <summary>"FWrc" in the file's header.</summary>
    internal const int ApplicationId = 0x46577263;

    /// <summary>Makes sure that a whole database of this version is at the path.</summary>
    /// <param name="path">The file.</param>
    /// <param name="clock">For the id of a new household.</param>
    /// <exception cref="DatabaseRefusedException">What is there is foreign, half-written or newer.</exception>
    internal static void CreateOrUpgrade(string path, TimeProvider clock)
    {
        if (!DatabaseFile.Inspect(path, ApplicationId))
            DatabaseFile.Create(path, draft => Fill(draft, clock));
        Upgrade(path);
    }

    /// <summary>Whether a step of the tables is one that this version knows.</summary>
    internal static bool Knows(string migration)
    {
        using var context = RecordsConnection.Context("unopened.db", SqliteOpenMode.ReadOnly);
        return context.Database.GetMigrations().Contains(migration);
    }

    /// <summary>Refuses records with a step that this version does not know. Changes nothing.</summary>
    /// <exception cref="DatabaseRefusedException">There is such a step, or no history of steps at all.</exception>
    internal static void RefuseUnknownSteps(string path)
    {
        using var context = RecordsConnection.Context(path, SqliteOpenMode.ReadWrite);
        Pending(context, path);
    }

    /// <summary>Makes tables as they were after a step, with nothing in them but what the steps themselves put there.</summary>
    internal static void CreateAsOf(string path, string migration) => DatabaseFile.Create(path, draft =>
    {
        using var context = RecordsConnection.Context(draft, SqliteOpenMode.ReadWriteCreate);
        context.Database.ExecuteSqlRaw("PRAGMA journal_mode = WAL");
        context.GetService<IMigrator>().Migrate(migration);
        context.Database.ExecuteSqlRaw($"PRAGMA application_id = {ApplicationId}");
    });

    private static void Fill(string draft, TimeProvider clock)
    {
        using var context = RecordsConnection.Context(draft, SqliteOpenMode.ReadWriteCreate);
        // The framework sets this only where it makes the file itself, and then not for its owner only.
        context.Database.ExecuteSqlRaw("PRAGMA journal_mode = WAL");
        context.Database.Migrate();
        context.Households.Add(new Household { Id = Guid.CreateVersion7(clock.GetUtcNow()), Name = "Our kitchen", TimeZoneId = "UTC" });
        context.SaveChanges();
        context.Database.ExecuteSqlRaw($"PRAGMA application_id = {ApplicationId}");
    }

    private static void Upgrade(string path)
    {
        using var context = RecordsConnection.Context(path, SqliteOpenMode.ReadWrite);
        string[] pending = Pending(context, path);
        if (pending.Length == 0)
            return;

        using var turn = DatabaseFile.TakeTurn(path);
        BackUp(path, $"{path}.before-{pending[0]}");
        // A kill during an earlier try leaves the framework's own lock behind, for which it would wait for ever. It is our turn.
        context.Database.ExecuteSqlRaw("DROP TABLE IF EXISTS \"__EFMigrationsLock\"");
        context.Database.Migrate();
    }

    private static string[] Pending(RecordsContext context, string path)
    {
        string[] known = [.. context.Database.GetMigrations()];
        string[] applied = Applied(context, path);
        string[] unknown = [.. applied.Except(known)];
        if (unknown.Length > 0)
            throw new DatabaseRefusedException(path, string.CompareOrdinal(unknown[^1], known[^1]) > 0
                ? $"it was written by a newer version of FermentWatch (migration {unknown[^1]} is not known here). Start that version again."
                : $"it was written by a version in development (migration {unknown[^1]} went out with no version; this one knows later ones). Start "
                    + "that version again, or put a backup in its place.");
        return [.. known.Except(applied)];
    }

    private static string[] Applied(RecordsContext context, string path)
    {
        try
        {
            bool hasHistory = context.Database
                .SqlQuery<int>($"SELECT count(*) AS Value FROM sqlite_schema WHERE type = 'table' AND name = '__EFMigrationsHistory'").Single() == 1;
            if (!hasHistory)
                throw new DatabaseRefusedException(path, "it bears our mark, but no history of its tables: it is half-written.");
            return [.. context.Database.GetAppliedMigrations()];
        }
        catch (SqliteException trouble)
        {
            throw new DatabaseRefusedException(path, $"SQLite cannot read it ({trouble.Message}).", trouble);
        }
    }

    /// <summary>Copies a database as it stands, unless an earlier try did.</summary>
    private static void BackUp(string path, string copy)
    {
        if (File.Exists(copy))
            return;
        string draft = copy + ".draft";
        File.Delete(draft);
        PrivateFiles.CreateEmpty(draft);
        using (var connection = new SqliteConnection(DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadOnly, pooled: false)))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "VACUUM INTO $1";
            command.Parameters.AddWithValue("$1", draft);
            command.ExecuteNonQuery();
        }

        File.Move(draft, copy);
    }
}
