namespace FermentWatch.Service.Settings;

/// <summary>
/// Settings from environment variables named <c>FERMENTWATCH__SECTION__KEY</c>. The variables are handed in, so that a test
/// need not change those of its own process.
/// </summary>
internal sealed class SettingsFromEnvironment : ConfigurationProvider, IConfigurationSource
{
    /// <summary>What the names of all our variables and secret files begin with.</summary>
    public const string Prefix = "FERMENTWATCH__";

    private const string Separator = "__";

    public SettingsFromEnvironment(IReadOnlyDictionary<string, string> variables)
    {
        foreach ((string name, string value) in variables)
            if (name.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase))
                Data[name[Prefix.Length..].Replace(Separator, ConfigurationPath.KeyDelimiter, StringComparison.Ordinal)] = value;
    }

    /// <summary>The variable that carries a setting.</summary>
    public static string NameOf(string key) =>
        Prefix + key.Replace(ConfigurationPath.KeyDelimiter, Separator, StringComparison.Ordinal).ToUpperInvariant();

    public IConfigurationProvider Build(IConfigurationBuilder builder) => this;
}
