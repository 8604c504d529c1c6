using FermentWatch.Intake.Outside;

namespace FermentWatch.Intake.Tests.Outside;

public sealed class LinkOptionsTests
{
    [Fact]
    public void Defaults_AsShipped_AreOff()
    {
        var options = new LinkOptions();

        Assert.Equal(
            (false, "", 1883, "5", "fermentwatch", false, TimeSpan.FromDays(7)),
            (options.Enabled, options.Host, options.Port, options.ProtocolVersion, options.ClientId, options.UseTls, options.SessionExpiry));
        Assert.Empty(options.DiscoverFilters);
        Assert.Empty(options.Errors());
    }

    [Fact]
    public void ThrowIfWrong_EverythingWrong_NamesAllInOneMessage()
    {
        var options = new LinkOptions
        {
            Enabled = true, Port = 0, ProtocolVersion = "4", ClientId = "", Password = "x", AuthorityFile = "/no/such.pem",
            SessionExpiry = TimeSpan.Zero, DiscoverFilters = { "a/#/b" },
        };

        var thrown = Assert.Throws<ArgumentException>(options.ThrowIfWrong);

        Assert.Equal(
            "The settings of the outside broker are wrong. "
            + "Host is empty; the name or address of the broker belongs here. "
            + "Port is 0; a number from 1 to 65535 belongs here. "
            + "ProtocolVersion is '4'; 5 or 3.1.1 belongs here. "
            + "ClientId has 0 characters; 1 to 128 belong here. "
            + "Password is set and User is not; both or none belong here. "
            + "SessionExpiry is 00:00:00; a time from 00:01:00 to 30.00:00:00 belongs here. "
            + "AuthorityFile is set and UseTls is not; it has no use without TLS. "
            + "AuthorityFile is '/no/such.pem', where there is no file; a PEM file belongs here. "
            + "DiscoverFilters: In the topic filter 'a/#/b' the '#' must stand alone at the end.",
            thrown.Message);
    }
}
