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

    /// <summary>Largest payload in bytes, 1024 to 1048576. Default: 131072, some 2,000 readings in one pack.</summary>
    public int MaxPayloadBytes { get; set; } = 131_072;

    /// <summary>Most clients connected at a time, 1 to 10000. Default: 200.</summary>
    public int MaxConnections { get; set; } = 200;

    /// <summary>How long a client may take from the first byte to be let in, 1 to 60 seconds. Default: 10 seconds.</summary>
    public TimeSpan ConnectTimeout { get; set; } = TimeSpan.FromSeconds(10);

    /// <summary>How often those connected are asked whether they still may be, 1 to 60 seconds. Default: 20 seconds.</summary>
    public TimeSpan CredentialCheckInterval { get; set; } = TimeSpan.FromSeconds(20);

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (!IPAddress.TryParse(BindAddress, out _))
            yield return $"BindAddress is '{BindAddress}'; an IP address belongs here, like 127.0.0.1 or 0.0.0.0.";
        if (Port is < 0 or > 65_535)
            yield return $"Port is {Port}; a number from 0 to 65535 belongs here.";
        if (MaxPayloadBytes is < 1_024 or > 1_048_576)
            yield return $"MaxPayloadBytes is {MaxPayloadBytes}; a number from 1024 to 1048576 belongs here.";
        if (MaxConnections is < 1 or > 10_000)
            yield return $"MaxConnections is {MaxConnections}; a number from 1 to 10000 belongs here.";
        if (ConnectTimeout < TimeSpan.FromSeconds(1) || ConnectTimeout > TimeSpan.FromMinutes(1))
            yield return $"ConnectTimeout is {ConnectTimeout}; a time from 00:00:01 to 00:01:00 belongs here.";
        if (CredentialCheckInterval < TimeSpan.FromSeconds(1) || CredentialCheckInterval > TimeSpan.FromMinutes(1))
            yield return $"CredentialCheckInterval is {CredentialCheckInterval}; a time from 00:00:01 to 00:01:00 belongs here.";
    }

    /// <summary>Fails with everything that is wrong in one message.</summary>
    /// <exception cref="ArgumentException">At least one setting is wrong.</exception>
    public void ThrowIfWrong()
    {
        string[] errors = [.. Errors()];
        if (errors.Length > 0)
            throw new ArgumentException("The settings of the broker are wrong. " + string.Join(" ", errors));
    }
}
