using System.Security.Cryptography.X509Certificates;
using FermentWatch.Kitchen.Topics;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace FermentWatch.Intake.Outside;

/// <summary>How we present ourselves to an outside broker.</summary>
internal static class LinkClientOptions
{
    // More than the broker is asked to have under way, because brokers exceed it: what is received must find a place.
    private const ushort ReceiveMaximum = 1_000;

    private static readonly TimeSpan _keepAlive = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan _timeout = TimeSpan.FromSeconds(10);

    /// <summary>The library's options for our settings.</summary>
    /// <exception cref="System.Security.Cryptography.CryptographicException">A certificate file is none.</exception>
    public static MqttClientOptions Of(OutsideBrokerOptions options)
    {
        MqttClientOptionsBuilder builder = new MqttClientOptionsBuilder()
            .WithTcpServer(options.Host, options.Port)
            .WithClientId(options.ClientId)
            .WithKeepAlivePeriod(_keepAlive)
            .WithTimeout(_timeout)
            .WithCleanStart(false)
            .WithWillTopic(OwnTopics.ServiceStatus)
            .WithWillPayload("offline")
            .WithWillRetain()
            .WithWillQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce);
        builder = options.ProtocolVersion == "5"
            ? builder.WithProtocolVersion(MqttProtocolVersion.V500)
                .WithSessionExpiryInterval((uint)options.SessionExpiry.TotalSeconds)
                .WithReceiveMaximum(ReceiveMaximum)
            : builder.WithProtocolVersion(MqttProtocolVersion.V311);
        if (options.User.Length > 0)
            builder = builder.WithCredentials(options.User, options.Password);
        if (options.UseTls)
            builder = builder.WithTlsOptions(tls => Secure(tls, options));
        return builder.Build();
    }

    private static void Secure(MqttClientTlsOptionsBuilder tls, OutsideBrokerOptions options)
    {
        tls.UseTls().WithTargetHost(options.Host);
        if (options.AuthorityFile is { } authority)
        {
            var chain = new X509Certificate2Collection();
            chain.ImportFromPemFile(authority);
            // Household authorities publish no lists of what they revoked.
            tls.WithTrustChain(chain).WithRevocationMode(X509RevocationMode.NoCheck);
        }
        if (options.ClientCertificateFile is { } own)
            tls.WithClientCertificates(new X509Certificate2Collection(X509Certificate2.CreateFromPemFile(own, options.ClientKeyFile)));
    }
}
