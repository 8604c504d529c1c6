using FermentWatch.Storage.Readings;

namespace FermentWatch.Storage.Tests.Readings;

public sealed class ReadingFileTests : IDisposable
{
    /// <summary>What makes of a log of this version one of the first.</summary>
    internal const string BackToTheFirstVersion =
        "DELETE FROM mean WHERE span > 60; ALTER TABLE state ADD COLUMN judged_seq INTEGER NOT NULL DEFAULT 0; DROP TABLE heard; DROP INDEX "
        + "reading_waiting; ALTER TABLE mean DROP COLUMN revision; "
        + "ALTER TABLE state DROP COLUMN pair; ALTER TABLE state DROP COLUMN opened; PRAGMA user_version = 1;";

    /// <summary>What makes of a log of this version one of the third, which had no roll-ups longer than an hour.</summary>
    internal const string BackToTheThirdVersion = "DELETE FROM mean WHERE span > 60; PRAGMA user_version = 3;";

    private readonly TemporaryFolder _folder = new();

    private string DatabasePath => _folder.File("readings.db");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Open_NoFile_MakesAWholeOneInWalModeThatOnlyTheOwnerCanReach()
    {
        string path = Path.Combine(_folder.Root, "new", "readings.db");
        await using (ReadingStore.Open(path))
            Assert.Equal("wal", TemporaryFolder.Sql(path, "PRAGMA journal_mode"));

        Assert.Equal(["readings.db"], Directory.GetFiles(Path.GetDirectoryName(path)!).Select(Path.GetFileName));
        Assert.Equal("ok", TemporaryFolder.Sql(path, "PRAGMA integrity_check"));
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
                File.GetUnixFileMode(Path.GetDirectoryName(path)!));
    }

    [Fact]
    public async Task Open_DraftLeftByAKill_IsThrownAway()
    {
        await File.WriteAllTextAsync(DatabasePath + ".draft", "half");
        await File.WriteAllTextAsync(DatabasePath + ".draft-journal", "half");
        await using (ReadingStore.Open(DatabasePath))
        {
        }

        Assert.Equal(["readings.db"], Directory.GetFiles(_folder.Root).Select(Path.GetFileName));
    }

    [Fact]
    public void Open_EmptyFile_IsRefused() => AssertRefused([], "the file is empty");

    [Fact]
    public void Open_TextFile_IsRefused() => AssertRefused(System.Text.Encoding.UTF8.GetBytes(new string('x', 5000)), "it is not a SQLite database");

    [Fact]
    public void Open_DatabaseOfSomethingElse_IsRefused()
    {
        TemporaryFolder.Sql(DatabasePath, "CREATE TABLE cheese(age INTEGER)");
        AssertRefused(File.ReadAllBytes(DatabasePath), "it is a SQLite database of something else (application id 0x00000000, ours is 0x46577264)");
    }

    [Fact]
    public async Task Open_CutShort_IsRefused()
    {
        byte[] whole = await WholeAsync();
        AssertRefused(whole[..^4096], $"it is cut short: {whole.Length - 4096} bytes of {whole.Length}");
    }

    [Fact]
    public async Task Open_PagesOfNoise_IsRefused()
    {
        byte[] noise = await WholeAsync();
        noise.AsSpan(100).Fill(0xA5);
        AssertRefused(noise, "SQLite cannot read it");
    }

    [Fact]
    public async Task Open_OfANewerVersion_IsRefused()
    {
        await WholeAsync();
        TemporaryFolder.Sql(DatabasePath, "PRAGMA user_version = 5");
        AssertRefused(null, "it was written by a newer version of FermentWatch (tables 5, this one knows 4). Start that version again.");
    }

    [Fact]
    public async Task Open_TableMissing_IsRefused()
    {
        await WholeAsync();
        TemporaryFolder.Sql(DatabasePath, "DROP TABLE mean");
        AssertRefused(null, "its table 'mean' is missing: it is half-written.");
    }

    [Fact]
    public void Open_JournalWithoutItsDatabase_IsRefused()
    {
        File.WriteAllText(DatabasePath + "-wal", "what was written last");
        var refused = Assert.Throws<DatabaseRefusedException>(() => ReadingStore.Open(DatabasePath));
        Assert.Contains("the file is missing, but its journal", refused.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(DatabasePath));
        Assert.Equal("what was written last", File.ReadAllText(DatabasePath + "-wal"));
    }

    private async Task<byte[]> WholeAsync()
    {
        await using (ReadingStore.Open(DatabasePath))
        {
        }

        return await File.ReadAllBytesAsync(DatabasePath);
    }

    /// <summary>Refused with these words, and not a byte of it changed.</summary>
    private void AssertRefused(byte[]? content, string words)
    {
        if (content is not null)
            File.WriteAllBytes(DatabasePath, content);
        byte[] before = File.ReadAllBytes(DatabasePath);
        var refused = Assert.Throws<DatabaseRefusedException>(() => ReadingStore.Open(DatabasePath));
        Assert.StartsWith($"{DatabasePath} was refused and left as it is: {words}", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(DatabasePath));
    }
}
