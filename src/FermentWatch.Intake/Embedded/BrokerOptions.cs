using System.Net;

namespace FermentWatch.Intake.Embedded;

/// <summary>Settings of the broker that lives in the service.</summary>
public sealed class BrokerOptions
{
    /// <summary>Whether it runs. Default: yes.</summary>
    public bool Enabled { get; set; } = true;

    /// <summary>The address it listens on. Default: this machine only. 0.0.0.0 lets sensors on the home network in.</summary>
    public string BindAddress { get; set; } = "127.0.0.1";

    /// <summary>The port it listens on, 0 to 65535; 0 lets the system choose. Default: 1883.</summary>
    public int Port { get; set; } = 1883;

    /// <summary>Whether it listens without TLS too. Default: yes.</summary>
    public bool PlainEnabled { get; set; } = true;

    /// <summary>The certificate for TLS: PEM, or PKCS #12 by the ending .pfx or .p12. Default: none, and no TLS.</summary>
    public string? CertificateFile { get; set; }

    /// <summary>The PEM file of its key, where it is not in <see cref="CertificateFile"/>.</summary>
    public string? CertificateKeyFile { get; set; }

    /// <summary>The password of its key, if it has one.</summary>
    public string? CertificatePassword { get; set; }

    /// <summary>The port for TLS, 0 to 65535; 0 lets the system choose. Default: 8883. Used when there is a certificate.</summary>
    public int TlsPort { get; set; } = 8883;

    /// <summary>Largest payload in bytes, 1024 to 1048576. Default: 131072, some 2,000 readings in one pack.</summary>
    public int MaxPayloadBytes { get; set; } = 131_072;

    /// <summary>Most clients connected at a time, 1 to 10000. Default: 200.</summary>
    public int MaxConnections { get; set; } = 200;

    /// <summary>Most clients connected at a time by one user, 1 to 10000. Default: 20.</summary>
    public int MaxConnectionsPerUser { get; set; } = 20;

    /// <summary>
    /// Most messages a second from one user over all its connections, 0 to 1000000; ten seconds' worth may come at once. Who sends
    /// more is slowed down. 0 sets no limit. Default: 500.
    /// </summary>
    public int MaxMessagesPerSecond { get; set; } = 500;

    /// <summary>
    /// Most bytes of one user's payloads that may wait to be written down, 1024 to 1073741824; beyond them its connections are not
    /// read from. Default: 1048576.
    /// </summary>
    public int MaxWaitingBytesPerUser { get; set; } = 1_048_576;

    /// <summary>How long a client may take from the first byte to be let in, 1 to 60 seconds. Default: 10 seconds.</summary>
    public TimeSpan ConnectTimeout { get; set; } = TimeSpan.FromSeconds(10);

    /// <summary>How often those connected are asked whether they still may be, 1 to 60 seconds. Default: 20 seconds.</summary>
    public TimeSpan CredentialCheckInterval { get; set; } = TimeSpan.FromSeconds(20);

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (!IPAddress.TryParse(BindAddress, out _))
            yield return $"BindAddress is '{BindAddress}'; an IP address belongs here, like 127.0.0.1 or 0.0.0.0.";
        foreach (string? error in (IEnumerable<string?>)
        [
            OutOfRange(nameof(Port), Port, 0, 65_535),
            OutOfRange(nameof(TlsPort), TlsPort, 0, 65_535),
            OutOfRange(nameof(MaxPayloadBytes), MaxPayloadBytes, 1_024, 1_048_576),
            OutOfRange(nameof(MaxConnections), MaxConnections, 1, 10_000),
            OutOfRange(nameof(MaxConnectionsPerUser), MaxConnectionsPerUser, 1, 10_000),
            OutOfRange(nameof(MaxMessagesPerSecond), MaxMessagesPerSecond, 0, 1_000_000),
            OutOfRange(nameof(MaxWaitingBytesPerUser), MaxWaitingBytesPerUser, 1_024, 1_073_741_824),
            OutOfRange(nameof(ConnectTimeout), ConnectTimeout),
            OutOfRange(nameof(CredentialCheckInterval), CredentialCheckInterval),
        ])
        {
            if (error is not null)
                yield return error;
        }
        if (!PlainEnabled && CertificateFile is null)
            yield return "PlainEnabled is false and CertificateFile is not set; one of the two is needed for anybody to connect.";
        if (CertificateFile is not null && !File.Exists(CertificateFile))
            yield return $"CertificateFile is '{CertificateFile}', where there is no file; a PEM, .pfx or .p12 file belongs here.";
        if (CertificateKeyFile is not null && !File.Exists(CertificateKeyFile))
            yield return $"CertificateKeyFile is '{CertificateKeyFile}', where there is no file; the PEM file of the key belongs here.";
    }

    /// <summary>Fails with everything that is wrong in one message.</summary>
    /// <exception cref="ArgumentException">At least one setting is wrong.</exception>
    public void ThrowIfWrong()
    {
        string[] errors = [.. Errors()];
        if (errors.Length > 0)
            throw new ArgumentException("The settings of the broker are wrong. " + string.Join(" ", errors));
    }

    private static string? OutOfRange(string name, int value, int least, int most) =>
        value >= least && value <= most ? null : $"{name} is {value}; a number from {least} to {most} belongs here.";

    private static string? OutOfRange(string name, TimeSpan value) =>
        value >= TimeSpan.FromSeconds(1) && value <= TimeSpan.FromMinutes(1)
            ? null
            : $"{name} is {value}; a time from 00:00:01 to 00:01:00 belongs here.";
}
