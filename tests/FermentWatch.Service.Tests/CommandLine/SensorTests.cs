using System.Text.Json;

namespace FermentWatch.Service.Tests.CommandLine;

public sealed class SensorTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-sensors").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Add_Sensor_PrintsItsCredentialOnceWithALineToPaste()
    {
        Call call = await Run("add", "Cellar shelf, left");
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        string password = call.Lines[2]["password  ".Length..];
        Assert.Matches("^[a-z2-9]{6}(-[a-z2-9]{6}){3}$", password);
        const string Topic = "fermentwatch/sensor/cellar-shelf-left/temperature";
        Assert.Equal(
            $"""
            broker    127.0.0.1 port 1883
            user      cellar-shelf-left
            password  {password}
            topic     {Topic}
            try it    mosquitto_pub -h 127.0.0.1 -p 1883 -i cellar-shelf-left -u cellar-shelf-left -P {password} -q 1 -t {Topic} -m 21.5
            The password is not kept and is not shown again.

            """, call.Output);
        Assert.DoesNotContain(password, (await Run("list", "--json")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Add_Json_HoldsWhatADeviceNeeds()
    {
        Call call = await Run("add", "hub", "--gateway", "zigbee/#", "--json");
        JsonElement json = JsonDocument.Parse(call.Output).RootElement;
        Assert.Equal(("127.0.0.1", 1883, "hub", "zigbee/#"), (json.GetProperty("host").GetString(), json.GetProperty("port").GetInt32(),
            json.GetProperty("user").GetString(), json.GetProperty("topic").GetString()));
        Assert.Equal(27, json.GetProperty("password").GetString()!.Length);
    }

    [Fact]
    public async Task Add_BrokerWithTlsOnly_SaysItsPort()
    {
        string certificate = Path.Combine(_folder, "broker.pem");
        await File.WriteAllTextAsync(certificate, "");
        Call call = await Call.WithEnvironment(new Dictionary<string, string>
        {
            ["FERMENTWATCH__STORAGE__FOLDER"] = _folder, ["FERMENTWATCH__MQTT__PLAINENABLED"] = "false",
                ["FERMENTWATCH__MQTT__CERTIFICATEFILE"] = certificate,
        }, "sensor", "add", "shed");
        Assert.Equal("broker    127.0.0.1 port 8883, TLS", call.Lines[0]);
        Assert.StartsWith("try it    mosquitto_pub -h 127.0.0.1 -p 8883 --cafile CERTIFICATE.pem -i shed ", call.Lines[4], StringComparison.Ordinal);
    }

    [Fact]
    public async Task List_SensorsAndGateways_ShowsThoseInService()
    {
        await Run("add", "shed");
        await Run("add", "cellar");
        await Run("add", "hub", "--gateway", "zigbee/#");
        await Run("remove", "shed");
        Call call = await Run("list", "--csv");
        Assert.Equal(
            """
            user,name,where,topic,last_heard
            cellar,cellar,,fermentwatch/sensor/cellar,
            hub,gateway,,zigbee/#,

            """, call.Output);
    }

    [Fact]
    public async Task Add_WithAPlaceThatIsOfferedReady_StandsThere()
    {
        Assert.Equal(0, (await Run("add", "shelf", "--place", "Cellar")).ExitCode);
        Assert.Equal("shelf,shelf,cellar,fermentwatch/sensor/shelf,", (await Run("list", "--csv")).Lines[1]);
    }

    [Fact]
    public async Task Remove_Gateway_WithdrawsItsCredential()
    {
        await Run("add", "hub", "--gateway", "zigbee/#");
        Assert.Equal("hub may publish no more; what it published stays.\n", (await Run("remove", "hub")).Output);
        Assert.Equal("none yet\n", (await Run("list")).Output);
    }

    [Fact]
    public async Task Add_NameOfASensorTakenOutOfService_IsFreeAgain()
    {
        await Run("add", "shed");
        await Run("remove", "shed");
        Assert.Equal(0, (await Run("add", "shed")).ExitCode);
    }

    [Theory]
    [InlineData("add ---", "name: --- cannot be used. Enter a name of 1 to 60 letters, one of a to z or a digit among them, such as 'cellar shelf'.")]
    [InlineData("add Shed", "name: shed cannot be used. There is a sensor or gateway of that name already: enter another name.")]
    [InlineData("add new --place attic", "place: attic cannot be used. Choose one of kitchen counter, cellar, refrigerator.")]
    [InlineData("add new --place celler", "place: celler cannot be used. Did you mean 'cellar'?")]
    [InlineData("add new --gateway zigbee/#/x",
        "gateway: zigbee/#/x cannot be used. In the topic filter 'zigbee/#/x' the '#' must stand alone at the end.")]
    [InlineData("remove shad", "user: shad cannot be used. Did you mean shed?")]
    public async Task Verb_WrongCall_ExitsTwoWithOneLine(string args, string line)
    {
        await Run("add", "shed");
        Call call = await Run(args.Split(' '));
        Assert.Equal((2, ""), (call.ExitCode, call.Output));
        Assert.Equal(line, Assert.Single(call.ErrorLines));
    }

    [Fact]
    public async Task Verb_DatabaseThatIsNone_ExitsOneAndLeavesItAsItIs()
    {
        string database = Path.Combine(_folder, "records.db");
        await File.WriteAllTextAsync(database, "shopping list");
        Call call = await Run("list");
        Assert.Equal((1, ""), (call.ExitCode, call.Output));
        Assert.StartsWith($"{database} was refused and left as it is: it is not a SQLite database.", Assert.Single(call.ErrorLines),
            StringComparison.Ordinal);
        Assert.Equal("shopping list", await File.ReadAllTextAsync(database));
    }

    private Task<Call> Run(params string[] args) =>
        Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = _folder }, ["sensor", .. args]);
}
