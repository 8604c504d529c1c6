using FermentWatch.Intake.Embedded.Listening;
using FermentWatch.Intake.Tests.Peers;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed class BrokerTlsTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Publish_OverTlsByARealPeer_IsStored(bool pkcs12)
    {
        using var certificate = new SelfSignedCertificate();
        await using var broker = await BrokerUnderTest.StartAsync(set: options =>
        {
            (options.PlainEnabled, options.TlsPort) = (false, 0);
            options.CertificateFile = pkcs12 ? certificate.Pkcs12File : certificate.CertificateFile;
            options.CertificateKeyFile = pkcs12 ? null : certificate.KeyFile;
            options.CertificatePassword = pkcs12 ? "secret" : null;
        });
        (_, string password) = await broker.Household.AddSensorAsync("cellar");

        var (exit, error) = await MosquittoPublisher.RunAsync(
            "-h", "127.0.0.1", "-p", $"{broker.Broker.TlsPort}", "--cafile", certificate.CertificateFile,
            "-i", "cellar", "-u", "cellar", "-P", password, "-q", "1", "-t", "fermentwatch/sensor/cellar/temperature", "-m", "17.25");

        Assert.Equal((0, ""), (exit, error));
        Assert.Null(broker.Broker.Port);
        Assert.Equal([17.25], broker.Stored.Select(reading => reading.Value));
    }

    [Fact]
    public async Task Connect_PlainTextOnTheTlsPort_IsCutAndTheBrokerGoesOn()
    {
        using var certificate = new SelfSignedCertificate();
        await using var broker = await BrokerUnderTest.StartAsync(set: options =>
            (options.TlsPort, options.CertificateFile, options.CertificateKeyFile) = (0, certificate.CertificateFile, certificate.KeyFile));
        (_, string password) = await broker.Household.AddSensorAsync("cellar");

        var (exit, _) = await MosquittoPublisher.RunAsync(
            "-h", "127.0.0.1", "-p", $"{broker.Broker.TlsPort}", "-i", "cellar", "-u", "cellar", "-P", password,
            "-q", "1", "-t", "fermentwatch/sensor/cellar/temperature", "-m", "17.25");
        await broker.ConnectAsync("cellar", password);

        Assert.NotEqual(0, exit);
        Assert.Empty(broker.Stored);
    }

    [Fact]
    public void Current_FileRenewed_IsReadAgainAfterAMinute()
    {
        using var first = new SelfSignedCertificate("first");
        using var second = new SelfSignedCertificate("second");
        var time = new FakeTimeProvider();
        using var certificate = new ServerCertificate(first.CertificateFile, first.KeyFile, null, time);

        File.Copy(second.CertificateFile, first.CertificateFile, true);
        File.Copy(second.KeyFile, first.KeyFile, true);
        File.SetLastWriteTimeUtc(first.CertificateFile, File.GetLastWriteTimeUtc(first.CertificateFile).AddSeconds(5));
        Assert.Equal("CN=first", certificate.Current().Subject);
        time.Advance(TimeSpan.FromMinutes(1));

        Assert.Equal("CN=second", certificate.Current().Subject);
    }

    [Fact]
    public void Current_RenewalHalfWritten_KeepsTheLastGoodOne()
    {
        using var first = new SelfSignedCertificate("first");
        var time = new FakeTimeProvider();
        using var certificate = new ServerCertificate(first.CertificateFile, first.KeyFile, null, time);

        File.WriteAllText(first.CertificateFile, "-----BEGIN CERT");
        File.SetLastWriteTimeUtc(first.CertificateFile, File.GetLastWriteTimeUtc(first.CertificateFile).AddSeconds(5));
        time.Advance(TimeSpan.FromMinutes(1));

        Assert.Equal("CN=first", certificate.Current().Subject);
    }
}
