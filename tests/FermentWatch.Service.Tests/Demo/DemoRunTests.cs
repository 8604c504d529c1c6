using System.Net;
using System.Text.RegularExpressions;
using FermentWatch.Service.CommandLine;
using FermentWatch.Service.Demo.Household;

namespace FermentWatch.Service.Tests.Demo;

public sealed class DemoRunTests
{
    /// <summary>Weeks of history come in by MQTT, the service answers, and nothing is left behind.</summary>
    [Fact]
    public async Task Demo_FromStartToEnd_SaysWhereToLookAnswersThereAndLeavesNothing()
    {
        await using var output = new WaitingWriter("\nhistory ");
        using var error = new StringWriter();
        using var ending = new CancellationTokenSource(TimeSpan.FromMinutes(3));
        var context = new CommandContext { Output = output, Error = error, Clock = TimeProvider.System };
        string[] before = Folders();
        Task<int> run = FermentWatchCommand.RunAsync(["demo"], context, ending.Token);
        await Task.WhenAny(output.Seen, run);
        Assert.Equal("", error.ToString());
        Assert.False(run.IsCompleted);
        string said = output.ToString();
        Assert.Contains("Nothing in it is real", said, StringComparison.Ordinal);
        Assert.Matches("send      mosquitto_pub -h 127.0.0.1 -p [1-9][0-9]* -i kitchen -u kitchen -P [a-z2-9-]{27} -q 1 -t "
            + "fermentwatch/sensor/kitchen/temperature -m 21.5\n", said);
        Assert.Matches("sign in   name Rowan, password [a-z2-9-]{27}\n", said);

        using var client = new HttpClient();
        var address = new Uri(Regex.Match(said, "open      (http://127.0.0.1:[0-9]+/)\n").Groups[1].Value);
        HttpResponseMessage live = await client.GetAsync(new Uri(address, "healthz/live"), ending.Token);
        Assert.Equal(HttpStatusCode.OK, live.StatusCode);
        string jars = await new DemoGuest(client, address)
            .JarsAsync("Rowan", Regex.Match(said, "password ([a-z2-9-]+)\n").Groups[1].Value, ending.Token);
        Assert.All(NumberNine.Lots, lot => Assert.Equal(!lot.IsEnded, jars.Contains(lot.Form.Name!, StringComparison.OrdinalIgnoreCase)));
        Assert.Contains("Tasting this week", jars, StringComparison.Ordinal);
        Assert.Contains("pH rising", jars, StringComparison.Ordinal);

        await ending.CancelAsync();
        Assert.Equal(0, await run);
        Assert.Equal(before, Folders());
    }

    [Theory]
    [InlineData("70000")]
    [InlineData("door")]
    public async Task Demo_PortThatIsNone_ExitsTwo(string port)
    {
        using var error = new StringWriter { NewLine = "\n" };
        var context = new CommandContext { Output = TextWriter.Null, Error = error, Clock = TimeProvider.System };
        Assert.Equal(2, await FermentWatchCommand.RunAsync(["demo", "--port", port], context));
        Assert.Equal($"port: {port} cannot be used. Enter a whole number from 0 to 65535.\n", error.ToString());
    }

    private static string[] Folders() => Directory.GetDirectories(Path.GetTempPath(), "fermentwatch-demo-*");
}
