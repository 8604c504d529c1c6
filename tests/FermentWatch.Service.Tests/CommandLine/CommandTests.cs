namespace FermentWatch.Service.Tests.CommandLine;

public class CommandTests
{
    [Theory]
    [InlineData("")]
    [InlineData("serve")]
    [InlineData("outlook")]
    [InlineData("salt")]
    [InlineData("sensor")]
    [InlineData("sensor add")]
    [InlineData("recipe")]
    [InlineData("recipe import")]
    [InlineData("member")]
    [InlineData("member password")]
    [InlineData("check")]
    [InlineData("healthcheck")]
    public async Task Help_OfEveryVerb_ExitsZeroAndTellsTheUsage(string verb)
    {
        Call call = await Call.Of([.. verb.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        Assert.Contains($"Usage:\n  fermentwatch {verb}".TrimEnd(), call.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", call.Output, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("slat", "fermentwatch: Unrecognized command or argument 'slat'; did you mean salt?")]
    [InlineData("salt --produce-mas=2kg", "fermentwatch salt: Unrecognized command or argument '--produce-mas=2kg'; did you mean --produce-mass?")]
    [InlineData("salt --csv --json", "fermentwatch salt: --csv and --json exclude each other; see fermentwatch salt --help")]
    [InlineData("sensor rule list --cvs", "fermentwatch sensor rule list: Unrecognized command or argument '--cvs'; did you mean --csv?")]
    [InlineData("outlook --days", "fermentwatch outlook: Required argument missing for option: '--days'; see fermentwatch outlook --help")]
    public async Task Run_CallThatIsNotUnderstood_ExitsTwoWithOneLine(string args, string line)
    {
        Call call = await Call.Of(args.Split(' '));
        Assert.Equal((2, ""), (call.ExitCode, call.Output));
        Assert.Equal(line, Assert.Single(call.ErrorLines));
    }

    [Fact]
    public async Task Run_ArgumentThatNamesAFile_DoesNotReadIt()
    {
        string path = Path.GetTempFileName();
        await File.WriteAllTextAsync(path, "--version");
        Call call = await Call.Of($"@{path}");
        File.Delete(path);
        Assert.Equal(2, call.ExitCode);
    }
}
