namespace FermentWatch.Storage.Tests.Archives;

/// <summary>Archives that are not as they were written: all that is wrong is said by file and line, and nothing is taken.</summary>
public sealed class ArchiveTroubleTests : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Zip => _folder.File("all.zip");

    private string Elsewhere => _folder.File("elsewhere");

    public async Task InitializeAsync()
    {
        string first = Directory.CreateDirectory(_folder.File("first")).FullName;
        RandomHousehold.Make(first, 3);
        string records = Path.Combine(first, "records.db");
        TemporaryFolder.Sql(records,
            """
            DELETE FROM photo; DELETE FROM observation_entry; DELETE FROM observation; DELETE FROM jar_placement; DELETE FROM sensor_placement;
            DELETE FROM place;
            INSERT INTO place(Id, Name, ShelfOrder, Typical) VALUES('A', 'cellar', 1, 2), ('B', 'shelf', 2, 3), ('C', 'shed', 3, 3);
            """);
        TemporaryFolder.Sql(Path.Combine(first, "readings.db"),
            "DELETE FROM reading; INSERT INTO reading VALUES(1, 1, 1759579200000, 18.5, 1759579200000, 2, 1, 1), (1, 1, 1759579260000, 18.75, "
            + "1759579260000, 2, 0, 2)");
        await Archived.ExportAsync(first, Zip);
    }

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("\"shelf_order\":2", "\"shelf_order\":\"two\"",
        "records/place.json, line 3: says \"two\" for 'shelf_order'; a whole number would be right.")]
    [InlineData("\"name\":\"shed\"", "\"name\":\"Cellar\"",
        "records/place.json, line 4: cannot be kept (SQLite Error 19: 'UNIQUE constraint failed: place.Name').")]
    [InlineData("\"name\":\"shelf\",", "", "records/place.json, line 3: lacks 'name'.")]
    [InlineData("\"name\":\"shelf\"", "\"name\":null",
        "records/place.json, line 3: cannot be kept (SQLite Error 19: 'NOT NULL constraint failed: place.Name').")]
    [InlineData("\"name\":\"shelf\"", "\"light\":1,\"name\":\"shelf\"",
        "records/place.json, line 3: has 'light', which this version does not know.")]
    public void Import_BadRow_IsSaidByItsLineAndNothingIsTaken(string of, string with, string words)
    {
        Archived.Alter(Zip, "records/place.json", text => text.Replace(of, with, StringComparison.Ordinal));
        Assert.Equal([words], Archived.Import(Zip, Elsewhere).Kept);
        Assert.Equal(["serving.lock"], Directory.GetFileSystemEntries(Elsewhere).Select(Path.GetFileName));
    }

    [Fact]
    public void Import_SeveralBadRowsInSeveralFiles_SaysAllOfThem()
    {
        Archived.Alter(Zip, "records/place.json", text => text.Replace("\"id\":\"A\"", "\"id\":7", StringComparison.Ordinal));
        Archived.Alter(Zip, "records/jar_placement.json", _ => "[\n{\"id\":\"p\",\"jar_id\":\"nobody\",\"place_id\":\"B\",\"from\":1}\n]\n");
        Archived.Alter(Zip, "readings/sensor-1-temperature.csv", text => text.Replace("18.75", "warm", StringComparison.Ordinal));
        Assert.Equal(
        [
            "records/place.json, line 2: says 7 for 'id'; text would be right.",
            "records/jar_placement.json: has 1 rows where the manifest says 0.",
            "records/jar_placement.json, line 2: names one of jar that is not there.",
            "readings/sensor-1-temperature.csv, line 3: is no reading; a time, a number, a time and two words would be right.",
        ], Archived.Import(Zip, Elsewhere).Kept);
    }

    [Fact]
    public void Import_ReadingsOutOfTheirOrder_AreSaidByLine()
    {
        Archived.Alter(Zip, "readings/sensor-1-temperature.csv", text => text.Replace("12:01:00.000Z,18.75", "11:59:00.000Z,18.75",
            StringComparison.Ordinal));
        Assert.Equal(["readings/sensor-1-temperature.csv, line 3: does not come after the line before it."], Archived.Import(Zip, Elsewhere).Kept);
    }

    [Fact]
    public void Import_FileThatWasChanged_IsToldByItsSha256()
    {
        Archived.Alter(Zip, "records/place.csv", text => text.Replace("shelf", "cellr", StringComparison.Ordinal), withManifest: false);
        Assert.Equal(["records/place.csv: is other than the manifest says (SHA-256): it was changed or damaged."],
            Archived.Import(Zip, Elsewhere).Kept);
    }

    [Fact]
    public void Import_FileThatIsMissingOrTooMany_IsSaid()
    {
        using (var zip = System.IO.Compression.ZipFile.Open(Zip, System.IO.Compression.ZipArchiveMode.Update))
        {
            zip.GetEntry("records/place.csv")!.Delete();
            zip.CreateEntry("records/place.csv.bak");
        }
        Assert.Equal(["records/place.csv: is missing in the zip, though the manifest names it.",
            "records/place.csv.bak: is in the zip, and the manifest does not name it."], Archived.Import(Zip, Elsewhere).Kept);
    }

    [Fact]
    public void Import_ZipThatIsCutShort_IsRefusedWithWhatToDo()
    {
        using (FileStream file = File.OpenWrite(Zip))
            file.SetLength(file.Length / 2);
        Assert.Contains("this is no whole zip", Assert.Single(Archived.Import(Zip, Elsewhere).Kept), StringComparison.Ordinal);
    }

    [Fact]
    public void Import_OfALaterFormatOrVersion_IsRefused()
    {
        Archived.Alter(Zip, "manifest.json", text => text.Replace("\"format\": 1", "\"format\": 2", StringComparison.Ordinal), withManifest: false);
        Assert.Equal(["manifest.json: is of format 2; this version reads format 1. Import with the version that exported it."],
            Archived.Import(Zip, Elsewhere).Kept);
        string last = (string)TemporaryFolder.Sql(_folder.File("first/records.db"), "SELECT max(MigrationId) FROM __EFMigrationsHistory")!;
        Archived.Alter(Zip, "manifest.json", text => text.Replace("\"format\": 2", "\"format\": 1", StringComparison.Ordinal)
            .Replace(last, "99991231000000_OfAnotherYear", StringComparison.Ordinal), withManifest: false);
        Assert.Contains("is of a newer version of FermentWatch", Assert.Single(Archived.Import(Zip, Elsewhere).Kept), StringComparison.Ordinal);
    }

    [Fact]
    public void Import_WhereThereIsAHouseholdOrAServiceOrAFileOfAnother_IsRefusedAndChangesNothing()
    {
        byte[] before = File.ReadAllBytes(_folder.File("first/records.db"));
        var refused = Assert.Throws<IOException>(() => Archived.Import(Zip, _folder.File("first")));
        Assert.Contains("holds a household already", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(_folder.File("first/records.db")));

        using (ServedFolder.Take(new StorageOptions { Folder = Elsewhere }))
            Assert.Contains("is served by another", Assert.Throws<IOException>(() => Archived.Import(Zip, Elsewhere)).Message,
                StringComparison.Ordinal);

        File.WriteAllText(Path.Combine(Elsewhere, "records.db"), "a shopping list, longer than the header of a database would be: "
            + new string('x', 100));
        Assert.Throws<DatabaseRefusedException>(() => Archived.Import(Zip, Elsewhere));
        Assert.StartsWith("a shopping list", File.ReadAllText(Path.Combine(Elsewhere, "records.db")), StringComparison.Ordinal);
    }

    [Fact]
    public void Import_WhereAServiceWasStartedAndNothingEntered_TakesThePlace()
    {
        Directory.CreateDirectory(Elsewhere);
        Storage.Records.RecordsDatabase.CreateOrUpgrade(Path.Combine(Elsewhere, "records.db"), TimeProvider.System);
        Assert.Empty(Archived.Import(Zip, Elsewhere).Kept);
        Assert.Equal(3L, TemporaryFolder.Sql(Path.Combine(Elsewhere, "records.db"), "SELECT count(*) FROM place"));
    }
}
