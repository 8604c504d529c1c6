using System.Text.Json;
using FermentWatch.TestKit;

namespace FermentWatch.Faults.Tests;

/// <summary>What the service writes of itself, as a journal or a gatherer of logs takes it.</summary>
public sealed class ServiceLogTests : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("fermentwatch-log-");

    public void Dispose() => _root.Delete(recursive: true);

    [Theory]
    [InlineData("SERILOG__MINIMUMLEVEL__DEFAULT",
        "Serilog:MINIMUMLEVEL:DEFAULT is 'Loud'; one of Verbose, Debug, Information, Warning, Error, Fatal")]
    [InlineData("LOGGING__LOGLEVEL__MICROSOFT",
        "Logging:LOGLEVEL:MICROSOFT is 'Loud'; one of Trace, Debug, Information, Warning, Error, Critical, None")]
    [InlineData("LOG__LEVEL", "Log:Level is 'Loud'; one of Verbose, Debug, Information, Warning, Error, Fatal")]
    [InlineData("LOG__FORM", "Log:Form is 'Loud'; one of Text, Json, Journal")]
    public async Task Serve_LevelThatNobodyKnows_IsAWrongSettingInOneLine(string key, string words)
    {
        string name = $"FERMENTWATCH__{key}";
        await using ServiceProcess service = ServiceProcess.Start(_root.FullName, settings: new Dictionary<string, string> { [name] = "Loud" });
        Assert.Equal(2, await service.EndedAsync());
        Assert.Equal(["One setting is wrong:", $"{words} belongs here. [environment {name}]"], service.Errors, StringComparer.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Serve_AsText_EachLineHasItsDate()
    {
        IReadOnlyCollection<string> lines = await LinesAsync("Text");
        Assert.All(lines, line => Assert.Matches(@"^\d{4}-\d\d-\d\d \d\d:\d\d:\d\d [+-]\d\d:\d\d \[(INF|WRN)\] ", line));
    }

    [Fact]
    public async Task Serve_AsJson_EachLineIsADocumentWithTimeAndMessage()
    {
        IReadOnlyCollection<string> lines = await LinesAsync("Json");
        Assert.All(lines, line =>
        {
            JsonElement entry = JsonDocument.Parse(line).RootElement;
            Assert.True(entry.GetProperty("@t").TryGetDateTimeOffset(out _));
            Assert.NotEmpty(entry.GetProperty("@m").GetString()!);
        });
    }

    [Fact]
    public async Task Serve_ForTheJournal_EachLineHasItsPriority()
    {
        IReadOnlyCollection<string> lines = await LinesAsync("Journal");
        Assert.All(lines, line => Assert.Matches("^<[46]>[^<]", line));
        Assert.Contains(lines, line => line.StartsWith("<4>The log is written from Information on from now.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Hangup_AfterTheSettingsFileChanged_TakesTheNewLevelAndAWrongOneIsSaid()
    {
        string file = Path.Combine(_root.FullName, "settings.json");
        await File.WriteAllTextAsync(file, """{"Log": {"Level": "Error"}}""");
        await using ServiceProcess service = await ServiceProcess.Start(Path.Combine(_root.FullName, "data"), arguments: $"--settings '{file}'")
            .UpAsync();
        Assert.Empty(service.Output);
        await File.WriteAllTextAsync(file, """{"Log": {"Level": "Information"}}""");
        await service.SignalAsync("HUP");
        await Patience.UntilAsync(() => service.Output.Any(line => line.EndsWith("[WRN] The log is written from Information on from now.",
            StringComparison.Ordinal)), "the new level is said");
        await File.WriteAllTextAsync(file, """{"Log": {"Level": "Loud"}}""");
        await service.SignalAsync("HUP");
        await Patience.UntilAsync(() => service.Output.Any(line => line.Contains("from Information on, as before: Log:Level is 'Loud'; one of ",
            StringComparison.Ordinal)), "the wrong level is said");
        Assert.False(service.Process.HasExited);
    }

    private async Task<IReadOnlyCollection<string>> LinesAsync(string form)
    {
        await using ServiceProcess service = await ServiceProcess.Start(_root.FullName, settings: new Dictionary<string, string>
            { ["FERMENTWATCH__LOG__FORM"] = form }).UpAsync();
        await service.SignalAsync("HUP");
        await Patience.UntilAsync(() => service.Output.Any(line => line.Contains("from now", StringComparison.Ordinal)), "the signal is heard");
        await service.StopAsync();
        return service.Output;
    }
}
