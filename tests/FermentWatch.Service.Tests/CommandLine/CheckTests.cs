namespace FermentWatch.Service.Tests.CommandLine;

public class CheckTests
{
    [Fact]
    public async Task Check_Defaults_PrintsEverySettingWithItsPlace()
    {
        Call call = await Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__WEB__PORT"] = "8350" }, "check");
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        Assert.Equal(
            """
            Storage:Folder = /var/lib/fermentwatch [default]
            Mqtt:Enabled = true [default]
            Mqtt:BindAddress = 127.0.0.1 [default]
            Mqtt:Port = 1883 [default]
            Mqtt:MaxPayloadBytes = 131072 [default]
            Mqtt:MaxConnections = 200 [default]
            Mqtt:ConnectTimeout = 00:00:10 [default]
            Mqtt:CredentialCheckInterval = 00:00:20 [default]
            Web:Address = 127.0.0.1 [default]
            Web:Port = 8350 [environment FERMENTWATCH__WEB__PORT]

            """, call.Output);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("serve")]
    [InlineData("healthcheck")]
    public async Task Verb_WrongSettings_ExitsTwoWithAllErrorsInOneMessage(string verb)
    {
        var environment = new Dictionary<string, string> { ["FERMENTWATCH__WEB__PORT"] = "door", ["FERMENTWATCH__MQTT__PORT"] = "-1" };
        Call call = await Call.WithEnvironment(environment, verb);
        Assert.Equal(2, call.ExitCode);
        Assert.Equal(
            """
            2 settings are wrong:
            Mqtt:Port is -1; a number from 0 to 65535 belongs here. [environment FERMENTWATCH__MQTT__PORT]
            Web:Port is 'door'; a whole number belongs here. [environment FERMENTWATCH__WEB__PORT]

            """, call.Error);
    }
}
