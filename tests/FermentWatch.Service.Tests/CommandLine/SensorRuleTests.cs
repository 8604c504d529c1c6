using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Service.Tests.CommandLine;

public sealed class SensorRuleTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-rules").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task AddListRemove_Rules_AreThereInTheirOrderAndGone()
    {
        await Run("sensor", "add", "shelf");
        Call added = await Rule("add", "hub/shelf/state", "--sensor", "shelf", "--value-at", "/temperature", "--unit", "degF", "--offset", "-0.4",
            "--low", "41F", "--high", "30C", "--longest-silence", "6h");
        Assert.Equal((0, "", "hub/shelf/state is read as JSON at /temperature, temperature in degF. It feeds shelf.\n"),
            (added.ExitCode, added.Error, added.Output));
        Assert.Equal(0, (await Rule("add", "probes/{device}/ph", "--unit", "pH")).ExitCode);
        Assert.Equal(0, (await Rule("add", "packs", "--sensor", "shelf", "--payload", "senml", "--record", "dev:1/")).ExitCode);

        Assert.Equal(
            """
            number,topic,sensor,reads,offset,range,longest_silence
            1,hub/shelf/state,shelf,"JSON at /temperature, temperature in degF",-0.4,5 °C to 30 °C,06:00:00
            2,probes/{device}/ph,{device},"a bare number, ph in pH",,,
            3,packs,shelf,"a SenML pack, records dev:1/",,,

            """, (await Rule("list", "--csv")).Output);

        Assert.Equal("The rule for probes/{device}/ph is removed; what it stored stays.\n",
            (await Rule("remove", "2", "--topic", "probes/{device}/ph")).Output);
        Assert.Equal(["hub/shelf/state", "packs"], (await Rule("list", "--csv")).Lines[1..].Select(line => line.Split(',')[1]));
    }

    [Theory]
    [InlineData("add hub/x --unit Cel", "rule: hub/x cannot be used. Give the sensor, or put {device} where the topic names it.")]
    [InlineData("add hub/x --sensor shelv --unit Cel", "sensor: shelv cannot be used. Did you mean shelf?")]
    [InlineData("add hub/x --sensor shelf --unit Grad", "rule: hub/x cannot be used. The quantity is missing; {quantities} belongs here.|rule: "
        + "hub/x cannot be used. The unit is 'Grad'; {units} are known.")]
    [InlineData("add hub/x --sensor shelf --unit Cel --low cold", "low: cold cannot be used. Enter a number, such as 18C or 64F.")]
    [InlineData("add hub/x --sensor shelf --unit Cel --time tomorrow", "time: tomorrow cannot be used. Choose one of s, ms, iso8601.")]
    [InlineData("add fermentwatch/sensor/+/temperature --sensor shelf --unit Cel",
        "rule: fermentwatch/sensor/+/temperature cannot be used. Topics under fermentwatch/sensor/ need no rule.")]
    [InlineData("remove 1", "number: 1 cannot be used. There is no rule.")]
    public async Task Verb_WrongCall_ExitsTwoAndFilesNothing(string args, string lines)
    {
        await Run("sensor", "add", "shelf");
        Call call = await Rule(args.Split(' '));
        Assert.Equal((2, ""), (call.ExitCode, call.Output));
        string right = lines.Replace("{quantities}", MeasuredQuantity.NamesInWords, StringComparison.Ordinal)
            .Replace("{units}", string.Join(", ", MeasureUnit.All), StringComparison.Ordinal);
        Assert.Equal(right.Split('|'), call.ErrorLines);
        Assert.Equal("none yet\n", (await Rule("list")).Output);
    }

    private Task<Call> Rule(params string[] args) => Run(["sensor", "rule", .. args]);

    private Task<Call> Run(params string[] args) =>
        Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = _folder }, args);
}
