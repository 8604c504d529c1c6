using System.Text;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace FermentWatch.Storage.Tests.Records;

public sealed class RecordsFileTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string DatabasePath => _folder.File("records.db");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Model_AgainstItsMigrations_HasNoChangeWithoutOne()
    {
        using var context = RecordsConnection.Context(DatabasePath, SqliteOpenMode.Memory);
        Assert.False(context.Database.HasPendingModelChanges());
    }

    [Fact]
    public void CreateOrUpgrade_NoFile_MakesAWholeOne()
    {
        File.WriteAllText(DatabasePath + ".draft", "left by a kill");
        Open();
        Open();
        Assert.Equal(["records.db"], Directory.GetFiles(_folder.Root).Select(Path.GetFileName));
        Assert.Equal("wal", TemporaryFolder.Sql(DatabasePath, "PRAGMA journal_mode"));
        Assert.Equal("ok", TemporaryFolder.Sql(DatabasePath, "PRAGMA integrity_check"));
        Assert.Equal(1L, TemporaryFolder.Sql(DatabasePath, "SELECT count(*) FROM household"));
        foreach (string table in new[] { "AspNetUsers", "DataProtectionKeys" })
            Assert.Equal(0L, TemporaryFolder.Sql(DatabasePath, $"SELECT count(*) FROM {table}"));
    }

    [Fact]
    public void CreateOrUpgrade_AccountsFromBeforeRolesWereWrittenDown_StayAdultsAndChildrenStayChildren()
    {
        using (var context = RecordsConnection.Context(DatabasePath, SqliteOpenMode.ReadWriteCreate))
            context.GetService<IMigrator>().Migrate("Initial");
        TemporaryFolder.Sql(DatabasePath, $"PRAGMA application_id = {RecordsDatabase.ApplicationId}");
        foreach (string name in new[] { "Ada", "Lena" })
            TemporaryFolder.Sql(DatabasePath, "INSERT INTO AspNetUsers (Id, UserName, DisplayName, EmailConfirmed, PhoneNumberConfirmed, "
                + "TwoFactorEnabled, LockoutEnabled, AccessFailedCount) "
                + $"VALUES ('{name}', '{name}', '{name}', 0, 0, 0, 0, 0)");
        TemporaryFolder.Sql(DatabasePath, "INSERT INTO AspNetUserClaims (UserId, ClaimType, ClaimValue) VALUES ('Lena', "
            + "'http://schemas.microsoft.com/ws/2008/06/identity/claims/role', 'Child')");
        Open();
        Assert.Equal("Ada Adult, Lena Child",
            TemporaryFolder.Sql(DatabasePath, "SELECT group_concat(UserId || ' ' || ClaimValue, ', ' ORDER BY UserId) FROM AspNetUserClaims"));
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("ALTER TABLE round ADD COLUMN DecideAsked TEXT NOT NULL DEFAULT 'decided'", "decided")]
    public void CreateOrUpgrade_RoundsFromBeforeDecisionsWereWrittenDown_KeepAllTheyHad(string between, string decided)
    {
        using (var context = RecordsConnection.Context(DatabasePath, SqliteOpenMode.ReadWriteCreate))
            context.GetService<IMigrator>().Migrate("TastesAskedFor");
        TemporaryFolder.Sql(DatabasePath, $"PRAGMA application_id = {RecordsDatabase.ApplicationId}");
        foreach (int day in new[] { 4, 5 })
            TemporaryFolder.Sql(DatabasePath, "INSERT INTO round (Date, DueAt, OpenedAt, Missed, TasteAsked) "
                + $"VALUES ('2026-10-0{day}', {day}1, {day}2, 0, 'asked {day}')");
        if (between.Length > 0)
            TemporaryFolder.Sql(DatabasePath, between);
        Open();
        Assert.Equal($"2026-10-04 41 42 0 asked 4 {decided}, 2026-10-05 51 52 0 asked 5 {decided}", TemporaryFolder.Sql(DatabasePath,
            "SELECT group_concat(Date || ' ' || DueAt || ' ' || OpenedAt || ' ' || Missed || ' ' || TasteAsked || ' ' || DecideAsked, ', ' "
            + "ORDER BY Date) FROM round"));
    }

    [Fact]
    public void CreateOrUpgrade_EmptyFile_IsRefused() => AssertRefused([], "the file is empty");

    [Fact]
    public void CreateOrUpgrade_TextFile_IsRefused() =>
        AssertRefused(Encoding.UTF8.GetBytes(new string('x', 5000)), "it is not a SQLite database");

    [Fact]
    public async Task CreateOrUpgrade_TheOtherDatabaseOfOurs_IsRefused()
    {
        await using (Storage.Readings.ReadingStore.Open(DatabasePath))
        {
        }

        AssertRefused(null, "it is a SQLite database of something else (application id 0x46577264, ours is 0x46577263)");
    }

    [Fact]
    public void CreateOrUpgrade_CutShort_IsRefused()
    {
        Open();
        byte[] whole = File.ReadAllBytes(DatabasePath);
        AssertRefused(whole[..(whole.Length / 2)], "it is cut short");
    }

    [Fact]
    public void CreateOrUpgrade_OurMarkWithoutTables_IsRefused()
    {
        TemporaryFolder.Sql(DatabasePath, $"PRAGMA application_id = {RecordsDatabase.ApplicationId}");
        AssertRefused(null, "it bears our mark, but no history of its tables: it is half-written.");
    }

    [Fact]
    public void CreateOrUpgrade_OfANewerVersion_IsRefused()
    {
        Open();
        TemporaryFolder.Sql(DatabasePath, "INSERT INTO __EFMigrationsHistory VALUES('99991231000000_Future', '99.0.0')");
        AssertRefused(null, "it was written by a newer version of FermentWatch (migration 99991231000000_Future is not known here). Start that "
            + "version again.");
    }

    [Fact]
    public void CreateOrUpgrade_OfAVersionThatNeverWentOut_IsRefusedByItsTrueName()
    {
        Open();
        TemporaryFolder.Sql(DatabasePath, "INSERT INTO __EFMigrationsHistory VALUES('20260101000000_Trial', '10.0.0')");
        AssertRefused(null, "it was written by a version in development (migration 20260101000000_Trial went out with no version; this one knows "
            + "later ones). Start that version again, or put a backup in its place.");
    }

    [Fact]
    public void CreateOrUpgrade_OlderOne_KeepsACopyAndBringsItUpToDate()
    {
        string first = BackToBeforeTheFirstMigration();
        TemporaryFolder.Sql(DatabasePath, "CREATE TABLE of_old(note TEXT); INSERT INTO of_old VALUES('kept');");
        // As a kill in the middle of an earlier try leaves it; without care the framework would wait for this lock for ever.
        TemporaryFolder.Sql(DatabasePath, "INSERT INTO __EFMigrationsLock VALUES(1, '2025-10-04');");
        Open();

        Assert.Equal("kept", TemporaryFolder.Sql(DatabasePath, "SELECT note FROM of_old"));
        Assert.Equal(0L, TemporaryFolder.Sql(DatabasePath, "SELECT count(*) FROM place"));
        string copy = $"{DatabasePath}.before-{first}";
        Assert.Equal("kept", TemporaryFolder.Sql(copy, "SELECT note FROM of_old"));
        Assert.Equal(0L, TemporaryFolder.Sql(copy, "SELECT count(*) FROM sqlite_schema WHERE name = 'place'"));
        Assert.Equal("ok", TemporaryFolder.Sql(copy, "PRAGMA integrity_check"));
    }

    [Theory]
    [InlineData("Nothing")]
    [InlineData("Strips", "Strip")]
    [InlineData("Meter", "Strip", "Meter", "Probe")]
    [InlineData("Probe", "Probe", "Strip")]
    public void CreateOrUpgrade_HouseholdThatMeasuredBefore_IsTakenAtItsRecord(string tool, params string[] methods)
    {
        Open();
        using (var context = RecordsConnection.Context(DatabasePath, SqliteOpenMode.ReadWrite))
            context.GetService<IMigrator>().Migrate("SignInsAndWhoMadeWhat");
        for (int i = 0; i < methods.Length; i++)
            TemporaryFolder.Sql(DatabasePath, "PRAGMA foreign_keys = OFF; INSERT INTO observation(Id, JarId, At, EnteredAt, By, kind, Ph, Method, "
                + $"CheckedInBuffer, PaleBrine, Blended) VALUES('{i}', 'jar', 0, 0, 'Ada', 'ph', 3.9, '{methods[i]}', 1, 1, 0)");
        Open();
        Assert.Equal(tool, TemporaryFolder.Sql(DatabasePath, "SELECT PhTool FROM household"));
    }

    [Fact]
    public void CreateOrUpgrade_EntriesSignedByNameOnly_AreThoseOfTheAccountThatBearsIt()
    {
        Open();
        using (var context = RecordsConnection.Context(DatabasePath, SqliteOpenMode.ReadWrite))
            context.GetService<IMigrator>().Migrate("WhatWhoeverSawItWas");
        TemporaryFolder.Sql(DatabasePath, "INSERT INTO AspNetUsers (Id, UserName, DisplayName, EmailConfirmed, PhoneNumberConfirmed, "
            + "TwoFactorEnabled, LockoutEnabled, AccessFailedCount) "
            + "VALUES ('of-lena', 'lena', 'Lena', 0, 0, 0, 0, 0)");
        foreach (string by in new[] { "Lena", "Tom", "Ben (guest)" })
            TemporaryFolder.Sql(DatabasePath, "PRAGMA foreign_keys = OFF; INSERT INTO observation(Id, JarId, At, EnteredAt, By, kind, Opened) "
                + $"VALUES('{by}', 'jar', 0, 0, '{by}', 'look', 0); "
                + $"INSERT INTO photo(ObservationId, Jpeg, By) VALUES('{by}', x'00', '{by}'); INSERT INTO mqtt_credential(Id, User, PasswordHash, "
                + $"TopicFilter, MadeBy) VALUES('{by}', '{by}', '', '#', '{by}'); "
                + $"INSERT INTO notice_route(Id, Person, Channel, Address, MadeBy) VALUES('{by}', '{by}', 1, '', '{by}')");
        Open();
        foreach (string of in new[] { "ById FROM observation", "ById FROM photo", "MadeById FROM mqtt_credential", "MadeById FROM notice_route" })
        {
            string key = of.EndsWith("photo", StringComparison.Ordinal) ? "ObservationId" : "Id";
            Assert.Equal("of-lena", TemporaryFolder.Sql(DatabasePath, $"SELECT {of} WHERE {key} = 'Lena'"));
            Assert.Equal(2L, TemporaryFolder.Sql(DatabasePath, $"SELECT count(*) FROM ({"SELECT " + of} WHERE {of.Split(' ')[0]} IS NULL)"));
        }
    }

    private void Open() => RecordsDatabase.CreateOrUpgrade(DatabasePath, TimeProvider.System);

    private string BackToBeforeTheFirstMigration()
    {
        Open();
        using var context = RecordsConnection.Context(DatabasePath, SqliteOpenMode.ReadWrite);
        context.GetService<IMigrator>().Migrate(Migration.InitialDatabase);
        return context.Database.GetMigrations().First();
    }

    /// <summary>Refused with these words, and not a byte of it changed.</summary>
    private void AssertRefused(byte[]? content, string words)
    {
        if (content is not null)
            File.WriteAllBytes(DatabasePath, content);
        byte[] before = File.ReadAllBytes(DatabasePath);
        var refused = Assert.Throws<DatabaseRefusedException>(Open);
        Assert.StartsWith($"{DatabasePath} was refused and left as it is: {words}", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(DatabasePath));
    }
}
