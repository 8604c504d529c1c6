using FermentWatch.Intake.Outside;

namespace FermentWatch.Intake.Tests.Outside;

public sealed class OutsideBrokerOptionsTests
{
    [Fact]
    public void Defaults_AsShipped_AreOff()
    {
        var options = new OutsideBrokerOptions();

        Assert.Equal(
            (false, "", 1883, "5", "fermentwatch", false, TimeSpan.FromDays(7)),
            (options.IsOn, options.Host, options.Port, options.ProtocolVersion, options.ClientId, options.UseTls, options.SessionExpiry));
        Assert.Empty(options.DiscoverFilters);
        Assert.Empty(options.Errors());
    }

    [Fact]
    public void ThrowIfWrong_EverythingWrong_NamesAllInOneMessage()
    {
        var options = new OutsideBrokerOptions
        {
            Host = "mqtt://hub", Port = 0, ProtocolVersion = "4", ClientId = "", Password = "x", AuthorityFile = "/no/such.pem",
            SessionExpiry = TimeSpan.Zero, DiscoverFilters = "x/+, a/#/b", ClientKeyFile = "/no/key.pem",
        };

        var thrown = Assert.Throws<ArgumentException>(options.ThrowIfWrong);

        Assert.Equal(
            "The settings of the outside broker are wrong. "
            + "Host is 'mqtt://hub'; a name or address belongs here, like broker.home or 192.168.1.5, without a scheme or port. "
            + "Port is 0; a number from 1 to 65535 belongs here. "
            + "ProtocolVersion is '4'; 5 or 3.1.1 belongs here. "
            + "ClientId has 0 characters; 1 to 128 belong here. "
            + "Password is set and User is not; both or none belong here. "
            + "SessionExpiry is 00:00:00; a time from 00:01:00 to 30.00:00:00 belongs here. "
            + "AuthorityFile is set and UseTls is not; it has no use without TLS. "
            + "AuthorityFile is '/no/such.pem', where there is no file; a PEM file belongs here. "
            + "ClientKeyFile is set and UseTls is not; it has no use without TLS. "
            + "ClientKeyFile is '/no/key.pem', where there is no file; a PEM file belongs here. "
            + "ClientKeyFile is set and ClientCertificateFile is not; both or none belong here. "
            + "DiscoverFilters holds one that is no filter. In the topic filter 'a/#/b' the '#' must stand alone at the end.",
            thrown.Message);
    }

    [Fact]
    public void Errors_FileThatIsNoCertificate_SaysWhichAndWhy()
    {
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, "shopping list");
            var options = new OutsideBrokerOptions { Host = "hub", UseTls = true, ClientCertificateFile = file };
            Assert.StartsWith($"ClientCertificateFile is '{file}' and cannot be used: ", Assert.Single(options.Errors()), StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
