using System.Reflection;

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
