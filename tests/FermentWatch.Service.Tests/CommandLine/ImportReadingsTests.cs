using Microsoft.Data.Sqlite;

namespace FermentWatch.Service.Tests.CommandLine;

public sealed class ImportReadingsTests : IAsyncLifetime, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-old-readings").FullName;

    private string Csv => Path.Combine(_folder, "old.csv");

    public Task InitializeAsync() => Run("sensor", "add", "cellar");

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Import_TimesWithOffsetInFahrenheitAndAnOffset_AreStoredInCelsiusAndWaitForTheirVerdict()
    {
        Call call = await ImportAsync("when,what,temp\n2024-01-05T06:00:00Z,a,50\n2024-01-05T07:30:00+01:00,b,50.9\n", "--time-column", "when",
            "--value-column", "temp", "--unit", "degF", "--offset", "-0.5");
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        Assert.StartsWith("2 readings of cellar were taken, 0 were there already, 0 left out", call.Output, StringComparison.Ordinal);
        Assert.Equal(["2024-01-05 06:00:00 9.50 0", "2024-01-05 06:30:00 10.00 0"], Stored());
    }

    [Fact]
    public async Task Import_AgainAndWithAnotherValueAtATime_AddsNothingAndSaysSo()
    {
        await ImportAsync("t;v\n2024-01-05 06:00;10,5\n2024-01-05 06:10;10,6\n", "--zone", "Europe/Vienna");
        Call call = await ImportAsync("t;v\n2024-01-05 06:00;10,5\n2024-01-05 06:10;11,6\n2024-01-05 06:20;10,7\n", "--zone", "Europe/Vienna");
        Assert.StartsWith("1 readings of cellar were taken, 1 were there already, 1 left out for another value at their time.", call.Output,
            StringComparison.Ordinal);
        Assert.Equal(["2024-01-05 05:00:00 10.50 0", "2024-01-05 05:10:00 10.60 0", "2024-01-05 05:20:00 10.70 0"], Stored());
    }

    [Fact]
    public async Task Import_BadLines_AreSaidByTheirNumberAndNothingIsTaken()
    {
        const string File =
            """
            t,v
            2024-03-31 01:59,10.1
            2024-03-31 02:30,10.2
            2024-10-27 02:30,10.3
            2024-10-27T02:30:00+02:00,10.3

            yesterday,10.4
            2024-03-31 04:00,warm
            2024-03-31 04:00
            2031-01-01 00:00,10.5
            1970-01-01 00:00,10.6
            """;
        Call call = await ImportAsync(File, "--zone", "Europe/Vienna");
        Assert.Equal((1, ""), (call.ExitCode, call.Output));
        Assert.Equal(
        [
            "line 3: 2024-03-31 02:30 did not exist in Europe/Vienna: clocks went forward over it",
            "line 4: 2024-10-27 02:30 came twice in Europe/Vienna, when clocks went back: which one is not said",
            "line 7: 'yesterday' is no ISO 8601 time; --time-format says another form",
            "line 8: 'warm' is no temperature; a number such as 18.5 or 18,5 would be right",
            "line 9: there are 1 fields where the header has 2",
            "line 10: 2030-12-31T23:00:00Z is in the future",
            "line 11: 1969-12-31T23:00:00Z is before there were such sensors: a clock that was never set",
            "7 bad lines. Nothing was taken. Mend these lines, or leave them out with --skip-bad.",
        ], call.ErrorLines);
        Assert.Empty(Stored());

        Call skipping = await ImportAsync(File, "--zone", "Europe/Vienna", "--skip-bad");
        Assert.Equal((0, 8, "7 bad lines. These lines were left out."), (skipping.ExitCode, skipping.ErrorLines.Length, skipping.ErrorLines[^1]));
        Assert.Equal(["2024-03-31 00:59:00 10.10 0", "2024-10-27 00:30:00 10.30 0"], Stored());
    }

    [Theory]
    [InlineData("05.01.2024 06:00", "dd.MM.uuuu HH:mm", "--utc-offset", "+01:00", "2024-01-05 05:00:00 10.00 0")]
    [InlineData("1704434400", "unix", null, null, "2024-01-05 06:00:00 10.00 0")]
    [InlineData("1704434400500", "unix-ms", null, null, "2024-01-05 06:00:00 10.00 0")]
    public async Task Import_OtherFormsOfTime_AreReadAsTheyAreSaid(string time, string form, string? option, string? value, string stored)
    {
        Call call = await ImportAsync($"t\tv\n{time}\t10\n",
            ["--time-format", form, "--delimiter", "tab", .. option is null ? [] : new[] { option, value! }]);
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        Assert.Equal([stored], Stored());
    }

    [Fact]
    public async Task Import_WrongCall_SaysEverythingThatIsWrong()
    {
        Call call = await Run("import", "readings", Csv, "--sensor", "attic", "--time-column", "t", "--value-column", "v", "--quantity", "weight",
            "--unit", "kg", "--zone", "Middle/Earth", "--delimiter", "x", "--time-format", "HH:mm");
        Assert.Equal(2, call.ExitCode);
        Assert.Equal(["quantity", "time format", "unit", "zone", "delimiter", "sensor"], call.ErrorLines.Select(line => line.Split(':')[0])
            .OrderBy(field => Array.IndexOf(["quantity", "time format", "unit", "zone", "delimiter", "sensor"], field)));
    }

    [Fact]
    public async Task Import_ColumnThatIsNotThere_NamesThoseThatAre()
    {
        Call call = await ImportAsync("t,v\n2024-01-05T06:00:00Z,10\n", "--value-column", "warmth");
        Assert.Equal(1, call.ExitCode);
        Assert.EndsWith("old.csv, line 1: there is no column 'warmth'; there are t, v", call.ErrorLines.Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_TimesWithoutAClock_AreRefusedWithWhatWouldSayIt()
    {
        Call call = await ImportAsync("t,v\n2024-01-05 06:00,10\n");
        Assert.Equal("line 2: 2024-01-05 06:00 does not say on which clock; --zone Europe/Vienna or --utc-offset +01:00 does", call.ErrorLines[0]);
    }

    private async Task<Call> ImportAsync(string csv, params string[] options)
    {
        await File.WriteAllTextAsync(Csv, csv);
        string[] columns = [.. options.Contains("--time-column") ? [] : new[] { "--time-column", "t" },
            .. options.Contains("--value-column") ? [] : new[] { "--value-column", "v" }];
        return await Run(["import", "readings", Csv, "--sensor", "cellar", .. columns, .. options]);
    }

    private Task<Call> Run(params string[] args) =>
        Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = _folder }, args);

    private string[] Stored()
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(_folder, "readings.db")};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText =
            """
            SELECT printf('%s %.2f %d', datetime(instant_ms / 1000, 'unixepoch'), value, verdict)
            FROM reading WHERE received_ms = instant_ms ORDER BY instant_ms
            """;
        using SqliteDataReader row = command.ExecuteReader();
        var lines = new List<string>();
        while (row.Read())
            lines.Add(row.GetString(0));
        return [.. lines];
    }
}
