using FermentWatch.Intake.Embedded;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed class BrokerOptionsTests
{
    [Fact]
    public void Defaults_AsShipped_ListenOnThisMachineOnly()
    {
        var options = new BrokerOptions();

        Assert.Equal(
            (true, "127.0.0.1", 1883, true, null, 8883, 131_072, 200, 500, TimeSpan.FromSeconds(10), TimeSpan.FromSeconds(20)),
            (options.Enabled, options.BindAddress, options.Port, options.PlainEnabled, options.CertificateFile, options.TlsPort,
                options.MaxPayloadBytes, options.MaxConnections, options.MaxMessagesPerSecond, options.ConnectTimeout,
                options.CredentialCheckInterval));
        Assert.Empty(options.Errors());
    }

    [Fact]
    public void ThrowIfWrong_EverythingWrong_NamesAllInOneMessage()
    {
        var options = new BrokerOptions
        {
            BindAddress = "kitchen",
            Port = 70_000,
            TlsPort = -1,
            PlainEnabled = false,
            CertificateKeyFile = "/no/such/key.pem",
            MaxMessagesPerSecond = -5,
            MaxPayloadBytes = 10,
            MaxConnections = 0,
            ConnectTimeout = TimeSpan.Zero,
            CredentialCheckInterval = TimeSpan.FromHours(1),
        };

        var thrown = Assert.Throws<ArgumentException>(options.ThrowIfWrong);

        Assert.Equal(
            "The settings of the broker are wrong. "
            + "BindAddress is 'kitchen'; an IP address belongs here, like 127.0.0.1 or 0.0.0.0. "
            + "Port is 70000; a number from 0 to 65535 belongs here. "
            + "TlsPort is -1; a number from 0 to 65535 belongs here. "
            + "MaxPayloadBytes is 10; a number from 1024 to 1048576 belongs here. "
            + "MaxConnections is 0; a number from 1 to 10000 belongs here. "
            + "MaxMessagesPerSecond is -5; a number from 0 to 1000000 belongs here. "
            + "ConnectTimeout is 00:00:00; a time from 00:00:01 to 00:01:00 belongs here. "
            + "CredentialCheckInterval is 01:00:00; a time from 00:00:01 to 00:01:00 belongs here. "
            + "PlainEnabled is false and CertificateFile is not set; one of the two is needed for anybody to connect. "
            + "CertificateKeyFile is '/no/such/key.pem', where there is no file; the PEM file of the key belongs here.",
            thrown.Message);
    }
}
