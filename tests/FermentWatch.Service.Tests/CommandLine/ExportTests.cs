using System.IO.Compression;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Service.Tests.CommandLine;

public sealed class ExportTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-export").FullName;

    private string Zip => Path.Combine(_folder, "all.zip");

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Export_ThenImportElsewhere_IsTheSameHouseholdWhosePeopleGetNewPasswords()
    {
        string home = Path.Combine(_folder, "home"), elsewhere = Path.Combine(_folder, "elsewhere"), again = Path.Combine(_folder, "again.zip");
        await RunAsync(home, "member", "add", "Robin");
        await RunAsync(home, "member", "add", "Kim", "--role", "child");
        await RunAsync(home, "sensor", "add", "cellar");
        Call export = await RunAsync(home, "export", "--to", Zip, "--readings");
        Assert.Equal((0, ""), (export.ExitCode, export.Error));
        Assert.StartsWith($"{Zip}: ", export.Output, StringComparison.Ordinal);

        Call import = await RunAsync(elsewhere, "import", Zip);
        Assert.Equal((0, ""), (import.ExitCode, import.Error));
        Assert.Contains("give each person a password by 'fermentwatch member password NAME'", import.Output, StringComparison.Ordinal);
        Assert.Equal("name,role\nKim,child\nRobin,adult\n", (await RunAsync(elsewhere, "member", "list", "--csv")).Output);
        Assert.Contains("\ncellar,cellar,", (await RunAsync(elsewhere, "sensor", "list", "--csv")).Output, StringComparison.Ordinal);
        await RunAsync(elsewhere, "export", "--to", again, "--readings");
        Assert.Equal(await File.ReadAllBytesAsync(Zip), await File.ReadAllBytesAsync(again));

        Assert.Equal(0, (await RunAsync(elsewhere, "member", "password", "Robin")).ExitCode);
        Assert.Equal(0, (await RunAsync(elsewhere, "member", "role", "Kim", "adult")).ExitCode);
    }

    [Fact]
    public async Task Export_WhereThereIsNoHousehold_SaysSoAndMakesNothing()
    {
        Call call = await RunAsync(Path.Combine(_folder, "nowhere"), "export", "--to", Zip);
        Assert.Equal(1, call.ExitCode);
        Assert.StartsWith("There is no household in ", call.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public async Task Export_ToAFileThatIsThere_IsRefusedAndLeavesIt()
    {
        await RunAsync(_folder, "sensor", "add", "cellar");
        await File.WriteAllTextAsync(Zip, "a letter");
        Call call = await RunAsync(_folder, "export", "--to", Zip);
        Assert.Equal((2, $"to: {Zip} cannot be used. Enter the name of a file that is not there yet.\n"), (call.ExitCode, call.Error));
        Assert.Equal("a letter", await File.ReadAllTextAsync(Zip));
    }

    [Fact]
    public async Task Import_OfADamagedZip_SaysWhatIsWrongByFileAndTakesNothing()
    {
        string home = Path.Combine(_folder, "home"), elsewhere = Path.Combine(_folder, "elsewhere");
        await RunAsync(home, "sensor", "add", "cellar");
        await RunAsync(home, "export", "--to", Zip);
        using (ZipArchive zip = ZipFile.Open(Zip, ZipArchiveMode.Update))
            zip.GetEntry("records/sensor.json")!.Delete();
        Call call = await RunAsync(elsewhere, "import", Zip);
        Assert.Equal((1, "records/sensor.json: is missing in the zip, though the manifest names it.\nNothing was taken.\n"),
            (call.ExitCode, call.Error));
        Assert.StartsWith("There is no household in ", (await RunAsync(elsewhere, "sensor", "list")).Error, StringComparison.Ordinal);
    }

    private static Task<Call> RunAsync(string folder, params string[] args) =>
        Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = folder }, args);
}
