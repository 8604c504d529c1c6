using System.Text;
using CsCheck;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Tests.Readings;

namespace FermentWatch.Storage.Tests.Archives;

public sealed class ArchiveRoundTripTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Export_OfARandomHouseholdThatWasImported_IsTheSameToTheLastByte() => Gen.Int.Sample(seed =>
    {
        using var folder = new TemporaryFolder();
        string first = Directory.CreateDirectory(folder.File("first")).FullName, second = folder.File("second");
        RandomHousehold.Make(first, seed);
        string before = Archived.ExportAsync(first, folder.File("before.zip")).Result;
        Assert.Empty(Archived.Import(before, second).Kept);
        string after = Archived.ExportAsync(second, folder.File("after.zip")).Result;
        foreach ((string name, byte[] content) in Archived.Files(before))
            Assert.Equal(Encoding.UTF8.GetString(content), Archived.Text(after, name));
        Assert.Equal(File.ReadAllBytes(before), File.ReadAllBytes(after));
        Assert.Equal("ok", TemporaryFolder.Sql(Path.Combine(second, "records.db"), "PRAGMA integrity_check"));
        Assert.Equal("ok", TemporaryFolder.Sql(Path.Combine(second, "readings.db"), "PRAGMA integrity_check"));
    }, iter: TestLength.Of(reduced: 12, full: 100), threads: 1);

    [Fact]
    public void Export_OfARandomHousehold_HoldsNoSecret() => Gen.Int.Sample(seed =>
    {
        using var folder = new TemporaryFolder();
        RandomHousehold.Make(folder.Root, seed);
        string zip = Archived.ExportAsync(folder.Root, folder.File("all.zip")).Result;
        Assert.DoesNotContain(Archived.Files(zip).Values,
            file => Encoding.UTF8.GetString(file).Contains(RandomHousehold.Secret, StringComparison.Ordinal));
    }, iter: TestLength.Of(reduced: 12, full: 100), threads: 1);

    [Fact]
    public async Task Import_OfPhotosAndTexts_KeepsEachByteOfThem()
    {
        RandomHousehold.Make(_folder.Root, 7);
        string records = _folder.File("records.db");
        TemporaryFolder.Sql(records, "DELETE FROM photo; DELETE FROM observation_entry; DELETE FROM observation; DELETE FROM jar_correction; "
            + "DELETE FROM jar_placement; DELETE FROM sensor_placement; DELETE FROM jar");
        TemporaryFolder.Sql(records,
            """
            INSERT INTO jar(Id, AddedWaterKilograms, BatchId, ChangedAtRevision, Cover, Cut, Lid, Name, Number, PackedAt, Portions, Target,
                VesselLitres, Salting_Knowledge, Salting_Percent)
            VALUES('J', 0.1, 'B', 1, 1, 'Shredded', 1, '=1+1', 3, 1759579200123, '[]', 3, 1.5, 1, 2.25);
            INSERT INTO observation(Id, JarId, At, By, EnteredAt, kind, Note) VALUES('o', 'J', 1759579200123, 'Robin', 1759579200124, 'look', 'is
            grey');
            INSERT INTO photo(ObservationId, Jpeg) VALUES('o', x'FFD8FF00E1');
            """);
        string zip = await Archived.ExportAsync(_folder.Root, _folder.File("all.zip"));
        Assert.Equal(new byte[] { 0xFF, 0xD8, 0xFF, 0x00, 0xE1 }, Archived.Files(zip)["photos/o.jpg"]);
        // A spreadsheet shows the name as text and does not reckon it.
        Assert.Contains(",\"'=1+1\",", Archived.Text(zip, "records/jar.csv"), StringComparison.Ordinal);
        Assert.Contains(",2025-10-04T12:00:00.123Z,", Archived.Text(zip, "records/jar.csv"), StringComparison.Ordinal);
        string elsewhere = _folder.File("elsewhere");
        Assert.Empty(Archived.Import(zip, elsewhere).Kept);
        Assert.Equal("FFD8FF00E1", TemporaryFolder.Sql(Path.Combine(elsewhere, "records.db"), "SELECT hex(Jpeg) FROM photo"));
        Assert.Equal("is\ngrey", TemporaryFolder.Sql(Path.Combine(elsewhere, "records.db"), "SELECT Note FROM observation"));
    }

    /// <summary>What a log keeps beside its readings is made again, to the last bit as judging made it.</summary>
    [Fact]
    public async Task Import_OfJudgedReadings_HasTheMeansAndCountsOfTheLogTheyCameFrom()
    {
        new List<string> { "readings.db", "records.db" }.ForEach(file => File.Delete(_folder.File(file)));
        RandomHousehold.Make(_folder.Root, 3);
        TemporaryFolder.Sql(_folder.File("readings.db"), "DELETE FROM reading");
        Reading[] readings = [.. Enumerable.Range(0, 4000).Select(each => Make.Timed(each * 47, 18 + (each % 13 / 7.0), sensor: 1 + (each % 2)))];
        await using (ReadingStore store = ReadingStore.Open(_folder.File("readings.db")))
        {
            await store.AppendAsync(readings, default);
            await store.Log.SettleAsync([.. readings.Skip(100).Select((each, place) => each.Judged(place % 9 == 0 ? Verdict.Jump : Verdict.Counts))],
                readings.Length, default);
        }
        string zip = await Archived.ExportAsync(_folder.Root, _folder.File("all.zip")), elsewhere = _folder.File("elsewhere");
        Assert.Empty(Archived.Import(zip, elsewhere).Kept);
        foreach (string all in (string[])["mean ORDER BY 1", "verdict_count WHERE count > 0 ORDER BY 1", "heard ORDER BY 1",
            "(SELECT sensor, quantity, instant_ms, value, received_ms, time_source, verdict FROM reading) ORDER BY 1"])
        {
            string columns = all.StartsWith("mean", StringComparison.Ordinal)
                ? "printf('%d|%d|%d|%d|%.17g|%.17g|%.17g|%d', span, sensor, quantity, start_ms, value, minimum, maximum, count)"
                : all.StartsWith('(') ? "printf('%d|%d|%d|%.17g|%d|%d|%d', sensor, quantity, instant_ms, value, received_ms, time_source, verdict)"
                : all.StartsWith("heard", StringComparison.Ordinal) ? "sensor || '|' || received_ms" : "sensor || '|' || verdict || '|' || count";
            string sql = $"SELECT count(*) || ':' || group_concat(line, ';') FROM (SELECT {columns} AS line FROM {all})";
            Assert.Equal(TemporaryFolder.Sql(_folder.File("readings.db"), sql), TemporaryFolder.Sql(Path.Combine(elsewhere, "readings.db"), sql));
        }
    }

    [Fact]
    public async Task Export_WithoutReadings_LeavesThemAndTheImportHasNone()
    {
        RandomHousehold.Make(_folder.Root, 11);
        string zip = await Archived.ExportAsync(_folder.Root, _folder.File("all.zip"), withReadings: false), elsewhere = _folder.File("elsewhere");
        Assert.DoesNotContain(Archived.Files(zip).Keys, name => name.StartsWith("readings/", StringComparison.Ordinal));
        Assert.Empty(Archived.Import(zip, elsewhere).Kept);
        Assert.Equal(0L, TemporaryFolder.Sql(Path.Combine(elsewhere, "readings.db"), "SELECT count(*) FROM reading"));
    }

    /// <summary>An archive of an earlier version is read into the tables of its time, which then go every later step.</summary>
    [Fact]
    public async Task Import_OfAnEarlierVersion_TakesTheTablesOfItsTimeAndBringsThemUpToDate()
    {
        RandomHousehold.Make(_folder.Root, 5);
        string zip = await Archived.ExportAsync(_folder.Root, _folder.File("all.zip")), elsewhere = _folder.File("elsewhere");
        const string Last = "SELECT MAX(MigrationId) FROM __EFMigrationsHistory";
        string last = (string)TemporaryFolder.Sql(_folder.File("records.db"), Last)!;
        string before = (string)TemporaryFolder.Sql(_folder.File("records.db"), Last + " WHERE MigrationId < "
            + "(SELECT MigrationId FROM __EFMigrationsHistory WHERE MigrationId LIKE '%_RecipesOfTheHousehold')")!;
        Archived.Alter(zip, "manifest.json", text => text.Replace(last, before, StringComparison.Ordinal), withManifest: false);
        Archived.Remove(zip, "records/recipe.json", "records/recipe.csv");
        Assert.Empty(Archived.Import(zip, elsewhere).Kept);
        Assert.Equal(last, TemporaryFolder.Sql(Path.Combine(elsewhere, "records.db"), Last));
    }
}
