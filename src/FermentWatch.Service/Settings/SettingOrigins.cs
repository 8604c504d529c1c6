using Microsoft.Extensions.Configuration.Json;

namespace FermentWatch.Service.Settings;

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
