using FermentWatch.Intake.Embedded;

namespace FermentWatch.Service.Tests.CommandLine;

public class CheckTests
{
    [Fact]
    public async Task Check_Defaults_PrintsEverySettingWithItsPlace()
    {
        Call call = await Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__WEB__PORT"] = "8350" }, "check");
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        Assert.Equal("Storage:Folder = /var/lib/fermentwatch [default]", call.Lines[0]);
        Assert.Equal(["Web:Address = 127.0.0.1 [default]", "Web:Port = 8350 [environment FERMENTWATCH__WEB__PORT]"], call.Lines[^2..]);
        Assert.Equal(typeof(BrokerOptions).GetProperties().Select(property => $"Mqtt:{property.Name}"), call.Lines[1..^2].Select(line => line.Split(' ')[0]));
        Assert.Contains("Mqtt:Port = 1883 [default]", call.Lines);
        Assert.Contains("Mqtt:CertificateFile = (none) [default]", call.Lines);
        Assert.Contains("Mqtt:ConnectTimeout = 00:00:10 [default]", call.Lines);
    }

    [Fact]
    public async Task Check_Secret_IsMasked()
    {
        Call call = await Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__MQTT__CERTIFICATEPASSWORD"] = "opensesame" }, "check");
        Assert.Contains("Mqtt:CertificatePassword = ******** [environment FERMENTWATCH__MQTT__CERTIFICATEPASSWORD]", call.Lines);
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
