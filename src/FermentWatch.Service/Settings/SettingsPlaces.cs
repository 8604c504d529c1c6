namespace FermentWatch.Service.Settings;

/// <summary>Where settings are gathered from; the later of file, environment and secret files wins.</summary>
public sealed record SettingsPlaces
{
    /// <summary>The settings file that is read if it exists and no other is named.</summary>
    public const string DefaultFile = "/etc/fermentwatch/fermentwatch.json";

    /// <summary>A JSON file that must exist; null reads <see cref="DefaultFile"/> if that exists.</summary>
    public string? File { get; init; }

    /// <summary>A folder of secret files, one a setting, each named like the environment variable; null for none.</summary>
    public string? SecretsFolder { get; init; }

    /// <summary>The environment variables.</summary>
    public required IReadOnlyDictionary<string, string> Environment { get; init; }

    /// <summary>Gathers the settings. What is wrong with the places themselves is told in the errors.</summary>
    public IConfigurationRoot Gather(List<string> errors)
    {
        var builder = new ConfigurationBuilder();
        AddFile(builder, errors);
        builder.Add(new SettingsFromEnvironment(Environment));
        AddSecrets(builder, errors);
        try
        {
            return builder.Build();
        }
        catch (InvalidDataException trouble)
        {
            errors.Add($"{File ?? DefaultFile} is no JSON: "
                + $"{trouble.InnerException?.InnerException?.Message ?? trouble.InnerException?.Message ?? trouble.Message}");
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            errors.Add($"The settings could not be read: {trouble.Message}");
        }
        return new ConfigurationBuilder().Build();
    }

    private void AddFile(ConfigurationBuilder builder, List<string> errors)
    {
        string path = Path.GetFullPath(File ?? DefaultFile);
        if (System.IO.File.Exists(path))
            builder.AddJsonFile(path, optional: false, reloadOnChange: false);
        else if (File is not null)
            errors.Add($"--settings is '{File}'; a file that exists belongs here.");
    }

    private void AddSecrets(ConfigurationBuilder builder, List<string> errors)
    {
        if (SecretsFolder is null)
            return;
        if (!Directory.Exists(SecretsFolder))
        {
            errors.Add($"The folder of secrets is '{SecretsFolder}'; a folder that exists belongs here.");
            return;
        }
        IConfigurationRoot files = new ConfigurationBuilder().AddKeyPerFile(source =>
        {
            source.FileProvider = new Microsoft.Extensions.FileProviders.PhysicalFileProvider(Path.GetFullPath(SecretsFolder));
            // A folder of secrets may be shared with other services.
            source.IgnoreCondition = name => !name.StartsWith(SettingsFromEnvironment.Prefix, StringComparison.OrdinalIgnoreCase);
        }).Build();
        builder.AddConfiguration(files.GetSection(SettingsFromEnvironment.Prefix.TrimEnd('_')));
    }
}

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
