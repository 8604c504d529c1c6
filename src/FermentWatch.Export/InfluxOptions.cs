namespace FermentWatch.Export;

/// <summary>Where series are passed on to: anything that takes the InfluxDB v2 write call. Without an address nothing of it runs.</summary>
public sealed class InfluxOptions
{
    /// <summary>The shortest and longest <see cref="SettleTime"/>; many receivers close a connection that was idle for a minute.</summary>
    private static readonly (TimeSpan Shortest, TimeSpan Longest) SettleTimes = (TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(50));

    private static readonly (TimeSpan Shortest, TimeSpan Longest) Timeouts = (TimeSpan.FromSeconds(1), TimeSpan.FromMinutes(2));

    /// <summary>The receiver's address, http or https, as far as <c>/api/v2/write</c>. Default: none, and nothing is passed on.</summary>
    public string? Address { get; set; }

    /// <summary>The token that may write; a secret. A receiver that asks for none takes any word.</summary>
    public string? Token { get; set; }

    /// <summary>The organisation, by name or id.</summary>
    public string? Org { get; set; }

    /// <summary>The bucket that is written to.</summary>
    public string? Bucket { get; set; }

    /// <summary>The tag <c>site</c> of every point, for those who gather several households. Default: home.</summary>
    public string Site { get; set; } = "home";

    /// <summary>
    /// How long the receiver must live on after it took points before they are believed to be on its disk, 1 to 50 seconds. What
    /// was taken less than that before it failed or was started again is sent again. Default: 30 seconds; victoria-metrics 1.79
    /// lost points up to 10 seconds old when it was killed.
    /// </summary>
    public TimeSpan SettleTime { get; set; } = TimeSpan.FromSeconds(30);

    /// <summary>Longest wait for one answer, 1 second to 2 minutes. Default: 10 seconds.</summary>
    public TimeSpan Timeout { get; set; } = TimeSpan.FromSeconds(10);

    /// <summary>Whether anything is passed on.</summary>
    public bool Enabled => Address is { Length: > 0 };

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (Enabled && Uri.TryCreate(Address, UriKind.Absolute, out Uri? address) && address.UserInfo.Length > 0)
            // It would be printed with the address.
            yield return "Address holds a user or password; Token is the place for a secret.";
        else if (Enabled && !IsAddress(Address))
            yield return $"Address is '{Address}'; the address of an InfluxDB belongs here, like http://192.168.1.10:8086.";
        foreach (string error in Enabled ? Missing() : [])
            yield return error;
        if (string.IsNullOrWhiteSpace(Site) || Site.Any(char.IsControl))
            yield return $"Site is '{Site}'; a short name of this household belongs here, like home.";
        if (SettleTime < SettleTimes.Shortest || SettleTime > SettleTimes.Longest)
            yield return $"SettleTime is {SettleTime:c}; a time from {SettleTimes.Shortest:c} to {SettleTimes.Longest:c} belongs here.";
        if (Timeout < Timeouts.Shortest || Timeout > Timeouts.Longest)
            yield return $"Timeout is {Timeout:c}; a time from {Timeouts.Shortest:c} to {Timeouts.Longest:c} belongs here.";
    }

    private static bool IsAddress(string? text) =>
        Uri.TryCreate(text, UriKind.Absolute, out Uri? uri) && uri.Scheme is "http" or "https" && uri.Query.Length == 0 && uri.Fragment.Length == 0;

    private IEnumerable<string> Missing()
    {
        if (string.IsNullOrWhiteSpace(Token))
            yield return "Token is missing beside an address; the token that may write belongs here, any word for a receiver that asks for none.";
        else if (Token.Any(letter => letter is < '!' or > '~'))
            // The value is a secret and is not repeated.
            yield return "Token holds a space or a character that cannot be sent; the token as the receiver shows it belongs here.";
        if (string.IsNullOrWhiteSpace(Org))
            yield return "Org is missing beside an address; the name of the organisation belongs here.";
        if (string.IsNullOrWhiteSpace(Bucket))
            yield return "Bucket is missing beside an address; the name of the bucket belongs here.";
    }
}
