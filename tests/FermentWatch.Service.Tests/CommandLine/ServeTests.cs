using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace FermentWatch.Service.Tests.CommandLine;

public sealed class ServeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-serve").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Run_WithoutAVerb_ShowsHelpAndServesNothing()
    {
        Call call = await Run("", webPort: 0, brokerPort: 0);
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        Assert.Contains("serve", call.Output, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_folder));
    }

    [Theory]
    [InlineData("sensor list")]
    [InlineData("sensor rule list")]
    [InlineData("member list")]
    [InlineData("member remove Mira")]
    public async Task Verb_ThatReadsWhereNoHouseholdIs_SaysSoAndMakesNothing(string verb)
    {
        string nowhere = Path.Combine(_folder, "nowhere");
        Call call = await Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = nowhere }, verb.Split(' '));
        Assert.Equal((1, ""), (call.ExitCode, call.Output));
        Assert.StartsWith($"There is no household in {nowhere}: no records.db. Name its folder by Storage:Folder", Assert.Single(call.ErrorLines),
            StringComparison.Ordinal);
        Assert.False(Directory.Exists(nowhere));
    }

    [Fact]
    public async Task Demo_PortThatIsTaken_ExitsOneWithOneLine()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        int port = ((IPEndPoint)taken.LocalEndpoint).Port;
        Call call = await Call.Of("demo", "--port", port.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(1, call.ExitCode);
        Assert.Equal($"Port {port} of the pages is taken: stop what has it, or take another, such as --port {port + 1}.",
            Assert.Single(call.ErrorLines));
    }

    [Fact]
    public async Task Serve_DatabaseThatIsNone_ExitsOneAndLeavesItAsItIs()
    {
        string database = Path.Combine(_folder, "records.db");
        await File.WriteAllTextAsync(database, "shopping list");
        Call call = await Run("serve", webPort: 0, brokerPort: 0);
        Assert.Equal(1, call.ExitCode);
        Assert.StartsWith($"The service could not start: {database} was refused and left as it is: ", Assert.Single(call.ErrorLines),
            StringComparison.Ordinal);
        Assert.Equal("shopping list", await File.ReadAllTextAsync(database));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Serve_PortThatIsTaken_ExitsOneAndSaysSo(bool ofThePages)
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        int port = ((IPEndPoint)taken.LocalEndpoint).Port;
        Call call = await Run("serve", ofThePages ? port : 0, ofThePages ? 0 : port);
        Assert.Equal(1, call.ExitCode);
        string of = ofThePages ? "the pages" : "the broker", setting = ofThePages ? "FERMENTWATCH__WEB__PORT" : "FERMENTWATCH__MQTT__PORT";
        Assert.Equal($"Port {port} of {of} is taken: stop what has it, or take another, such as {setting}={port + 1}.",
            Assert.Single(call.ErrorLines));
    }

    private Task<Call> Run(string verb, int webPort, int brokerPort) => Call.WithEnvironment(
        new Dictionary<string, string>
        {
            ["FERMENTWATCH__STORAGE__FOLDER"] = _folder,
            ["FERMENTWATCH__WEB__PORT"] = webPort.ToString(CultureInfo.InvariantCulture),
            ["FERMENTWATCH__MQTT__PORT"] = brokerPort.ToString(CultureInfo.InvariantCulture),
            ["FERMENTWATCH__SERILOG__MINIMUMLEVEL__DEFAULT"] = "Fatal",
        }, verb.Length == 0 ? [] : [verb]);
}
