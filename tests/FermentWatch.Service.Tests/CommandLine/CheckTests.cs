using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Notices.Mail;

namespace FermentWatch.Service.Tests.CommandLine;

public class CheckTests
{
    [Fact]
    public async Task Check_Defaults_PrintsEverySettingWithItsPlace()
    {
        Call call = await Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__WEB__PORT"] = "8350" }, "check");
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        Assert.Equal("Storage:Folder = /var/lib/fermentwatch [default]", call.Lines[0]);
        Assert.Equal(["Web:Address = 127.0.0.1 [default]", "Web:Port = 8350 [environment FERMENTWATCH__WEB__PORT]",
            "Web:PublicAddress = (none) [default]",
            "Web:TrustedProxies = (none) [default]", "Web:AllowedHosts = (none) [default]", "Web:PathBase = (none) [default]",
            "Web:MaxPagesAtOnce = 0 [default]", "Web:MaxPagesWaiting = 100 [default]",
            "Metrics:Enabled = false [default]", "Metrics:OpenToNetwork = false [default]",
            "Log:Level = Information [default]", "Log:Form = Text [default]"], call.Lines[^12..]);
        Assert.Equal(
            ["Backup:Folder", "Backup:Keep", .. typeof(BrokerOptions).GetProperties().Select(property => $"Mqtt:{property.Name}"),
                "Intake:LongestAhead", "Intake:LongestBack",
                .. typeof(OutsideBrokerOptions).GetProperties().Where(property => property.CanWrite)
                    .Select(property => $"OutsideBroker:{property.Name}"),
                "HomeHub:Enabled", "HomeHub:Prefix",
                "Influx:Address", "Influx:Token", "Influx:Org", "Influx:Bucket", "Influx:Site", "Influx:SettleTime", "Influx:Timeout",
                .. typeof(MailOptions).GetProperties().Where(property => property.CanWrite).Select(property => $"Mail:{property.Name}")],
            call.Lines[1..^12].Select(line => line.Split(' ')[0]));
        Assert.Contains("Mqtt:Port = 1883 [default]", call.Lines);
        Assert.Contains("Mqtt:CertificateFile = (none) [default]", call.Lines);
        Assert.Contains("Mqtt:ConnectTimeout = 00:00:10 [default]", call.Lines);
    }

    [Theory]
    [InlineData("Mqtt:CertificatePassword", "FERMENTWATCH__MQTT__CERTIFICATEPASSWORD")]
    [InlineData("OutsideBroker:Password", "FERMENTWATCH__OUTSIDEBROKER__PASSWORD")]
    [InlineData("Influx:Token", "FERMENTWATCH__INFLUX__TOKEN")]
    public async Task Check_Secret_IsMasked(string setting, string variable)
    {
        Call call = await Call.WithEnvironment(new Dictionary<string, string> { [variable] = "opensesame" }, "check");
        Assert.Contains($"{setting} = ******** [environment {variable}]", call.Lines);
        Assert.DoesNotContain(call.Lines, line => line.Contains("opensesame", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Check_ForwardingHalfSet_SaysAllThatIsMissingWithoutTheSecret()
    {
        var environment = new Dictionary<string, string>
        {
            ["FERMENTWATCH__INFLUX__ADDRESS"] = "influx.home", ["FERMENTWATCH__INFLUX__TOKEN"] = "open sesame",
                ["FERMENTWATCH__INFLUX__ORG"] = "home",
        };
        Call call = await Call.WithEnvironment(environment, "check");
        Assert.Equal(2, call.ExitCode);
        const string From = "[environment FERMENTWATCH__INFLUX__";
        Assert.Equal(
            $"""
            3 settings are wrong:
            Influx:Address is 'influx.home'; the address of an InfluxDB belongs here, like http://192.168.1.10:8086. {From}ADDRESS]
            Influx:Token holds a space or a character that cannot be sent; the token as the receiver shows it belongs here. {From}TOKEN]
            Influx:Bucket is missing beside an address; the name of the bucket belongs here.

            """, call.Error);
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
