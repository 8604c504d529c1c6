using FermentWatch.Service.Settings;
using Microsoft.Extensions.Configuration;

namespace FermentWatch.Service.Tests.Settings;

public sealed class ServiceSettingsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-settings").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Read_Nothing_GivesTheDefaults()
    {
        SettingsReading reading = ServiceSettings.Read(new ConfigurationBuilder().Build());
        Assert.Equal("", reading.Message);
        Assert.Equal((true, "127.0.0.1", 1883), (reading.Settings.Mqtt.Enabled, reading.Settings.Mqtt.BindAddress, reading.Settings.Mqtt.Port));
        Assert.Equal(8340, reading.OrThrow().Web.Port);
    }

    [Fact]
    public void Gather_FileEnvironmentAndSecretFile_TheLaterWins()
    {
        SettingsPlaces places = Places(
            """{ "Web": { "Port": 1, "Address": "0.0.0.0" }, "mqtt": { "port": 11, "ConnectTimeout": "00:00:05" } }""",
            new() { ["FERMENTWATCH__WEB__PORT"] = "2", ["FERMENTWATCH__MQTT__PORT"] = "12", ["OTHER__WEB__PORT"] = "9" },
            new() { ["FERMENTWATCH__MQTT__PORT"] = "13\n", ["database_password"] = "of another service" });
        (_, SettingsReading reading) = ServiceSettings.Gather(places);
        Assert.Empty(reading.Errors);
        ServiceSettings settings = reading.Settings;
        Assert.Equal(("0.0.0.0", 2, 13, TimeSpan.FromSeconds(5)),
            (settings.Web.Address, settings.Web.Port, settings.Mqtt.Port, settings.Mqtt.ConnectTimeout));
    }

    [Fact]
    public void Gather_EverythingWrong_SaysAllInOneMessageWithItsPlace()
    {
        SettingsPlaces places = Places(
            """
            {
              "Storage": { "Folder": "data" }, "Web": { "Prot": 80 }, "Mqtt": { "Port": [1883], "ConnectTimeout": "10" },
              "Wbe": { "Port": 80 }
            }
            """,
            new() { ["FERMENTWATCH__WEB__ADDRESS"] = "home", ["FERMENTWATCH__MQTT__ENABLED"] = "perhaps" },
            new() { ["FERMENTWATCH__MQTT__MAXPAYLOADBYTES"] = "7" });
        (_, SettingsReading reading) = ServiceSettings.Gather(places);
        Assert.Equal(
            $"""
            8 settings are wrong:
            Storage:Folder is 'data'; an absolute path belongs here, like /var/lib/fermentwatch. [{places.File}]
            Mqtt:ConnectTimeout is '10'; a time like 00:10:00 belongs here. [{places.File}]
            Mqtt:Enabled is 'perhaps'; true or false belongs here. [environment FERMENTWATCH__MQTT__ENABLED]
            Mqtt:Port is a list or section; a whole number belongs here.
            Mqtt:MaxPayloadBytes is 7; a number from 1024 to 1048576 belongs here. [secret file FERMENTWATCH__MQTT__MAXPAYLOADBYTES]
            Web:Prot is not known; did you mean Port? [{places.File}]
            Web:Address is 'home'; an IP address belongs here, like 127.0.0.1 or 0.0.0.0. [environment FERMENTWATCH__WEB__ADDRESS]
            Wbe is not known; did you mean Web?
            """, reading.Message);
        Assert.Equal(reading.Message, Assert.Throws<ArgumentException>(reading.OrThrow).Message);
    }

    [Fact]
    public void Gather_MetricsOpenedAndNotSwitchedOn_SaysWhatIsMissing()
    {
        (_, SettingsReading reading) = ServiceSettings.Gather(Places("""{ "Metrics": { "OpenToNetwork": true } }""", [], []));
        Assert.StartsWith("Metrics:OpenToNetwork is true, and there is nothing to open; Metrics:Enabled=true belongs beside it.",
            Assert.Single(reading.Errors), StringComparison.Ordinal);
    }

    [Fact]
    public void Gather_FileThatIsNoJson_SaysWhere()
    {
        SettingsPlaces places = Places("""{ "Web": { "Port": }""", [], []);
        (_, SettingsReading reading) = ServiceSettings.Gather(places);
        Assert.StartsWith($"{places.File} is no JSON: '}}' is an invalid start of a value.", Assert.Single(reading.Errors), StringComparison.Ordinal);
    }

    [Fact]
    public void Gather_FileOrFolderThatIsNotThere_IsAnError()
    {
        var places = new SettingsPlaces { File = "/nowhere/settings.json", SecretsFolder = "/nowhere/secrets", Environment = new Dictionary<string,
            string>() };
        (_, SettingsReading reading) = ServiceSettings.Gather(places);
        Assert.Equal(
            [
                "--settings is '/nowhere/settings.json'; a file that exists belongs here.",
                "The folder of secrets is '/nowhere/secrets'; a folder that exists belongs here.",
            ], reading.Errors);
    }

    [Theory]
    [InlineData("127.0.0.1", "127.0.0.1", true)]
    [InlineData("0.0.0.0", "127.0.0.1", true)]
    [InlineData("127.0.0.2", "127.0.0.1", false)]
    public void Read_SamePortForBrokerAndPages_IsAnErrorWhereTheAddressesMeet(string broker, string web, bool wrong)
    {
        IConfiguration configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["Mqtt:Port"] = "1883", ["Web:Port"] = "1883", ["Mqtt:BindAddress"] = broker, ["Web:Address"] = web,
        }).Build();
        Assert.Equal(wrong ? ["Mqtt:Port and Web:Port are both 1883; two different ports belong here."]
            : [], ServiceSettings.Read(configuration).Errors);
    }

    [Fact]
    public void Read_TlsPortOfThePages_IsAnErrorOnlyWithACertificate()
    {
        string certificate = Path.Combine(_folder, "broker.pem");
        File.WriteAllText(certificate, "");
        SettingsReading With(params (string Key, string Value)[] settings) => ServiceSettings.Read(new ConfigurationBuilder()
            .AddInMemoryCollection(settings.ToDictionary(each => each.Key, each => (string?)each.Value)).Build());
        Assert.Empty(With(("Mqtt:TlsPort", "8340")).Errors);
        Assert.Equal(["Mqtt:TlsPort and Web:Port are both 8340; two different ports belong here."],
            With(("Mqtt:TlsPort", "8340"), ("Mqtt:CertificateFile", certificate)).Errors);
        Assert.Equal(["Mqtt:Port and Mqtt:TlsPort are both 8883; two different ports belong here."],
            With(("Mqtt:Port", "8883"), ("Mqtt:CertificateFile", certificate)).Errors);
    }

    [Fact]
    public void Of_SettingNamedASecret_IsMaskedAndTheRestNot()
    {
        IConfiguration configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["Post:Password"] = "opensesame" }).Build();
        var options = new PostOptions { Password = "opensesame" };
        Assert.Equal(
            [("Post:Server", "mail", "default"), ("Post:Password", "********", "set"), ("Post:Token", "", "default")],
            EffectiveSettings.Of(configuration, "Post", options));
    }

    [Fact]
    public void Read_SecretThatCannotBeRead_IsNotRepeated()
    {
        IConfiguration configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { ["Pin:Token"] = "12x4" })
            .Build();
        var errors = new List<string>();
        SectionReader.Read<PinOptions>(configuration, "Pin", _ => [], errors);
        Assert.Equal("Pin:Token is a secret that cannot be read; a whole number belongs here.", Assert.Single(errors));
    }

    private SettingsPlaces Places(string json, Dictionary<string, string> environment, Dictionary<string, string> secrets)
    {
        string file = Path.Combine(_folder, "fermentwatch.json");
        File.WriteAllText(file, json);
        string folder = Directory.CreateDirectory(Path.Combine(_folder, "secrets")).FullName;
        foreach ((string name, string value) in secrets)
            File.WriteAllText(Path.Combine(folder, name), value);
        return new SettingsPlaces { File = file, SecretsFolder = folder, Environment = environment };
    }

    private sealed class PostOptions
    {
        public string Server { get; set; } = "mail";

        public string Password { get; set; } = "";

        public string Token { get; set; } = "";
    }

    private sealed class PinOptions
    {
        public int Token { get; set; }
    }
}
