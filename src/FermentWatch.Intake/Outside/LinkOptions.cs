namespace FermentWatch.Intake.Outside;

/// <summary>Settings of the link to a broker that the household already has.</summary>
public sealed class LinkOptions
{
    /// <summary>Whether there is one. Default: no.</summary>
    public bool Enabled { get; set; }

    /// <summary>Its name or address. Needed when enabled.</summary>
    public string Host { get; set; } = "";

    /// <summary>Its port, 1 to 65535. Default: 1883; with TLS it is 8883 as a rule.</summary>
    public int Port { get; set; } = 1883;

    /// <summary>Version of MQTT: 5 or 3.1.1. Default: 5.</summary>
    public string ProtocolVersion { get; set; } = "5";

    /// <summary>Our client id, 1 to 128 characters. It names the session in which the broker keeps messages for us: never change it lightly.</summary>
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
    /// the broker would keep all of it for us while we are away.
    /// </summary>
    public IList<string> DiscoverFilters { get; } = [];

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (Enabled && Host.Length == 0)
            yield return "Host is empty; the name or address of the broker belongs here.";
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
        foreach (string filter in DiscoverFilters)
            if (Topics.TopicFilter.WhatIsWrong(filter) is { } wrong)
                yield return $"DiscoverFilters: {wrong}";
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
    }
}
