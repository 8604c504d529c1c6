using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Intake.Outside;

/// <summary>Settings of the link to a broker that the household already has.</summary>
public sealed class OutsideBrokerOptions
{
    private const char BetweenFilters = ',';

    /// <summary>Its name or address. Default: empty, and no link.</summary>
    public string Host { get; set; } = "";

    /// <summary>Its port, 1 to 65535. Default: 1883; with TLS it is 8883 as a rule.</summary>
    public int Port { get; set; } = 1883;

    /// <summary>Version of MQTT: 5 or 3.1.1. Default: 5.</summary>
    public string ProtocolVersion { get; set; } = "5";

    /// <summary>Our client id, 1 to 128 characters. It names the session in which the broker keeps messages for us: never change it
    /// lightly.</summary>
    public string ClientId { get; set; } = "fermentwatch";

    /// <summary>User name, empty if the broker asks for none.</summary>
    public string User { get; set; } = "";

    /// <summary>Password, empty if the broker asks for none.</summary>
    public string Password { get; set; } = "";

    /// <summary>Whether to use TLS. Default: no.</summary>
    public bool UseTls { get; set; }

    /// <summary>PEM file of the authority that signed the broker's certificate. Default: those the system trusts.</summary>
    public string? AuthorityFile { get; set; }

    /// <summary>PEM file of our certificate, where the broker asks for one.</summary>
    public string? ClientCertificateFile { get; set; }

    /// <summary>PEM file of its key, where it is not in <see cref="ClientCertificateFile"/>.</summary>
    public string? ClientKeyFile { get; set; }

    /// <summary>How long the broker keeps messages for us while we are away, 1 minute to 30 days. Default: 7 days. MQTT 5 only.</summary>
    public TimeSpan SessionExpiry { get; set; } = TimeSpan.FromDays(7);

    /// <summary>
    /// Topic filters in which to look for unknown sensors, on top of our own topics and those of rules. Default: none, because
    /// the broker would keep all of it for us while we are away. Several are parted by commas.
    /// </summary>
    public string DiscoverFilters { get; set; } = "";

    /// <summary>Whether there is such a broker.</summary>
    public bool IsOn => Host.Length > 0;

    /// <summary>The filters of <see cref="DiscoverFilters"/>, one by one.</summary>
    public IReadOnlyList<string> Discover() =>
        DiscoverFilters.Split(BetweenFilters, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (Host.Length > 0 && Uri.CheckHostName(Host) == UriHostNameType.Unknown)
            yield return $"Host is '{Host}'; a name or address belongs here, like broker.home or 192.168.1.5, without a scheme or port.";
        if (Port is < 1 or > 65_535)
            yield return $"Port is {Port}; a number from 1 to 65535 belongs here.";
        if (ProtocolVersion is not ("5" or "3.1.1"))
            yield return $"ProtocolVersion is '{ProtocolVersion}'; 5 or 3.1.1 belongs here.";
        if (ClientId.Length is 0 or > 128)
            yield return $"ClientId has {ClientId.Length} characters; 1 to 128 belong here.";
        if (User.Length == 0 && Password.Length > 0)
            yield return "Password is set and User is not; both or none belong here.";
        if (SessionExpiry < TimeSpan.FromMinutes(1) || SessionExpiry > TimeSpan.FromDays(30))
            yield return $"SessionExpiry is {SessionExpiry}; a time from 00:01:00 to 30.00:00:00 belongs here.";
        foreach (string error in TlsErrors())
            yield return error;
        foreach (string filter in Discover())
            if (TopicFilter.WhatIsWrong(filter) is { } wrong)
                yield return $"DiscoverFilters holds one that is no filter. {wrong}";
    }

    /// <summary>Fails with everything that is wrong in one message.</summary>
    /// <exception cref="ArgumentException">At least one setting is wrong.</exception>
    public void ThrowIfWrong()
    {
        string[] errors = [.. Errors()];
        if (errors.Length > 0)
            throw new ArgumentException("The settings of the outside broker are wrong. " + string.Join(" ", errors));
    }

    private IEnumerable<string> TlsErrors()
    {
        foreach ((string name, string? file) in (IEnumerable<(string, string?)>)
        [
            (nameof(AuthorityFile), AuthorityFile), (nameof(ClientCertificateFile), ClientCertificateFile), (nameof(ClientKeyFile), ClientKeyFile),
        ])
        {
            if (file is null)
                continue;
            if (!UseTls)
                yield return $"{name} is set and UseTls is not; it has no use without TLS.";
            if (!File.Exists(file))
                yield return $"{name} is '{file}', where there is no file; a PEM file belongs here.";
        }
        if (ClientKeyFile is not null && ClientCertificateFile is null)
            yield return "ClientKeyFile is set and ClientCertificateFile is not; both or none belong here.";
        if (WhatIsWrong(AuthorityFile, file => new X509Certificate2Collection().ImportFromPemFile(file)) is { } authority)
            yield return $"AuthorityFile is '{AuthorityFile}' and cannot be used: {authority}";
        if ((ClientKeyFile is null || File.Exists(ClientKeyFile))
            && WhatIsWrong(ClientCertificateFile, file => X509Certificate2.CreateFromPemFile(file, ClientKeyFile).Dispose()) is { } own)
            yield return $"ClientCertificateFile is '{ClientCertificateFile}' and cannot be used: {own}";
    }

    private static string? WhatIsWrong(string? file, Action<string> read)
    {
        if (!File.Exists(file))
            return null;
        try
        {
            read(file);
            return null;
        }
        catch (Exception trouble) when (trouble is CryptographicException or IOException or UnauthorizedAccessException)
        {
            return trouble.Message;
        }
    }
}
