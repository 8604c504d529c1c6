namespace FermentWatch.Service.Tests.CommandLine;

public sealed class OutlookTemperatureFileTests : IDisposable
{
    private readonly string _path = Path.GetTempFileName();

    public void Dispose() => File.Delete(_path);

    [Fact]
    public async Task Outlook_FileOfOneTemperatureByDay_GivesTheSameAsThatTemperature()
    {
        Call constant = await Outlook("--temperature", "18C");
        Call file = await FromFile("day,temperature_c\n"
            + string.Join('\n', Enumerable.Range(0, 3 * 96 + 1).Select(step => FormattableString.Invariant($"{step / 96.0},18"))));
        Assert.Equal((0, constant.Output), (file.ExitCode, file.Output));
    }

    [Theory]
    [InlineData("time,temperature_c\n{0}T06:00:00+02:00,18\n")]
    [InlineData("time,temperature\n{0}T06:00,18C\n")]
    [InlineData("TIME,temperature_f\n{0} 06:00:00,64.4\n")]
    [InlineData("time,temperature_c\n{0},64.4F\n")]
    public async Task Outlook_FileWithTimes_CountsDaysFromTheFirst(string layout)
    {
        string lines = string.Join('\n', Enumerable.Range(1, 4).Select(day => string.Format(null, layout, $"2026-09-0{day}").Split('\n')[1]));
        Call file = await FromFile(layout.Split('\n')[0] + "\n" + lines);
        Assert.Equal(0, file.ExitCode);
        Assert.Equal("0,18.00", file.Lines[1][..7]);
        Assert.Contains("were not measured: filled from the room's own cycle", file.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outlook_FileWithGapsAndOutliers_SaysWhatWasFilledAndLeftOut()
    {
        Call file = await FromFile("day,temperature_c\n0,18\n0.5,85\n1,19\n");
        Assert.Equal(0, file.ExitCode);
        Assert.Equal(
            """
            Note: 1 temperatures outside -5 to 45 C or outside day 0 to 400 were left out.
            Note: 23.75 h of temperature were not measured: filled from the room's own cycle, with a wider spread.
            Caution: A forecast is not a measurement, and it knows nothing of mould or spoilage.

            """, file.Error);
    }

    [Fact]
    public async Task Outlook_PackedTomorrow_IsRefused()
    {
        Call file = await FromFile("time,temperature_c\n2026-09-01T06:00,18\n", "--packed", "2026-10-05");
        Assert.Equal(2, file.ExitCode);
        Assert.Equal("packed: 2026-10-05 cannot be used. Enter a day or time not later than now, 2026-10-04T12:00:00Z.",
            Assert.Single(file.ErrorLines));
    }

    [Theory]
    [InlineData("18\n19\n")]
    [InlineData("")]
    [InlineData("day,humidity\n0,40\n")]
    public async Task Outlook_FileWithoutTheHeader_IsRefusedWithTheLayout(string text)
    {
        Call file = await FromFile(text);
        Assert.Equal(2, file.ExitCode);
        Assert.Equal($"temperatures: {_path} cannot be used. Enter a header 'day,temperature_c' or 'time,temperature_c' and lines like '0.5,18.2' "
            + "or '2026-10-04T18:30:00Z,18.2'.", Assert.Single(file.ErrorLines));
    }

    [Fact]
    public async Task Outlook_FileWithLinesThatAreNone_NamesTheFirstFive()
    {
        Call file = await FromFile("day,temperature_c\n0,18\n" + string.Join('\n', Enumerable.Repeat("1,warm", 7)));
        Assert.Equal(2, file.ExitCode);
        Assert.Equal(6, file.ErrorLines.Length);
        Assert.StartsWith($"temperatures: {_path} line 3 '1,warm' cannot be used. ", file.ErrorLines[0], StringComparison.Ordinal);
        Assert.StartsWith($"temperatures: 2 more lines of {_path} cannot be used. ", file.ErrorLines[5], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outlook_FileThatIsNotThere_IsRefused()
    {
        Call file = await Outlook("--temperatures", "/nowhere/room.csv");
        Assert.Equal(2, file.ExitCode);
        Assert.StartsWith("temperatures: /nowhere/room.csv cannot be used. Enter a file that can be read", Assert.Single(file.ErrorLines),
            StringComparison.Ordinal);
    }

    private async Task<Call> FromFile(string text, params string[] more)
    {
        await File.WriteAllTextAsync(_path, text);
        return await Outlook(["--temperatures", _path, .. more]);
    }

    private static Task<Call> Outlook(params string[] more) =>
        Call.Of(["outlook", "--produce", "cabbage", "--salt", "2.25%", "--days", "3", "--csv", .. more]);
}
