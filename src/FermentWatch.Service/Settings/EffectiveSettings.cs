using System.Reflection;
using Microsoft.Extensions.Configuration.Json;

namespace FermentWatch.Service.Settings;

/// <summary>Settings as they are in force, for people to read; secrets are masked.</summary>
public static class EffectiveSettings
{
    /// <summary>What stands in place of a secret.</summary>
    public const string Mask = "********";

    /// <summary>One entry a setting: its key, its value and where that came from.</summary>
    public static IEnumerable<(string Key, string Value, string Origin)> Of(IConfiguration configuration, string section, object options)
    {
        foreach (PropertyInfo property in SectionReader.Settings(options.GetType()))
        {
            string key = $"{section}:{property.Name}";
            string value = SettingText.Show(property.GetValue(options));
            yield return (key, value.Length > 0 && SecretSettings.Holds(property) ? Mask : value, SettingOrigins.Of(configuration, key));
        }
    }
}

/// <summary>Which settings are never printed: those named so in any room's options class, whatever its packages.</summary>
internal static class SecretSettings
{
    private static readonly string[] Endings = ["Password", "Secret", "Token"];

    public static bool Holds(PropertyInfo setting) =>
        Endings.Any(ending => setting.Name.EndsWith(ending, StringComparison.Ordinal));
}

/// <summary>Tells where a setting came from, for messages.</summary>
internal static class SettingOrigins
{
    /// <summary>The file, the environment or the secret file that gave a setting its value; <c>default</c> where none did.</summary>
    public static string Of(IConfiguration configuration, string key)
    {
        if (configuration[key] is null)
            return "default";
        if (configuration is not IConfigurationRoot root)
            return "set";
        IConfigurationProvider? provider = root.Providers.LastOrDefault(each => each.TryGet(key, out _));
        return provider switch
        {
            JsonConfigurationProvider { Source: { Path: { } path, FileProvider: { } files } } => files.GetFileInfo(path).PhysicalPath ?? path,
            SettingsFromEnvironment => $"environment {SettingsFromEnvironment.NameOf(key)}",
            ChainedConfigurationProvider => $"secret file {SettingsFromEnvironment.NameOf(key)}",
            _ => "set",
        };
    }
}
