using System.Reflection;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Service.Settings;

/// <summary>Reads one section into its options class and tells everything that is wrong with it.</summary>
internal static class SectionReader
{
    /// <summary>Reads a section; settings that are not given keep their defaults.</summary>
    /// <param name="configuration">All settings.</param>
    /// <param name="section">Name of the section.</param>
    /// <param name="errorsOf">The class's own rules.</param>
    /// <param name="errors">What is wrong is added here.</param>
    public static T Read<T>(IConfiguration configuration, string section, Func<T, IEnumerable<string>> errorsOf, List<string> errors) where T : new()
    {
        var options = new T();
        IConfigurationSection given = configuration.GetSection(section);
        if (given.Value is { Length: > 0 } scalar)
            errors.Add($"{section} is '{scalar}'; a section with settings belongs here.");
        var properties = Settings(typeof(T)).ToDictionary(property => property.Name, StringComparer.OrdinalIgnoreCase);
        foreach (IConfigurationSection child in given.GetChildren())
        {
            if (properties.TryGetValue(child.Key, out PropertyInfo? property))
                ReadOne(configuration, child, $"{section}:{property.Name}", property, options, errors);
            else
                errors.Add(Unknown(configuration, $"{section}:{child.Key}", child.Key, properties.Keys));
        }
        foreach (string error in errorsOf(options))
            errors.Add(WithOrigin(configuration, $"{section}:{error.Split(' ')[0]}", $"{section}:{error}"));
        return options;
    }

    /// <summary>The settings of an options class, in the order they are written there.</summary>
    public static IEnumerable<PropertyInfo> Settings(Type options) =>
        options.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.CanWrite).OrderBy(property =>
            property.MetadataToken);

    /// <summary>What is said of a setting or section nobody knows.</summary>
    public static string Unknown(IConfiguration configuration, string key, string typed, IEnumerable<string> known)
    {
        string[] names = [.. known];
        string right = NearestName.Of(typed, names) is { } nearest ? $"did you mean {nearest}?" : $"known are {string.Join(", ", names)}.";
        return WithOrigin(configuration, key, $"{key} is not known; {right}");
    }

    private static void ReadOne(
        IConfiguration configuration, IConfigurationSection child, string key, PropertyInfo property, object options, List<string> errors)
    {
        bool secret = SecretSettings.Holds(property);
        if (child.Value is { } text && SettingText.TryRead(text.Trim(), property.PropertyType, out object? value))
            property.SetValue(options, value);
        else
            errors.Add(WithOrigin(configuration, key,
                $"{key} is {Came(child, secret)}; {SettingText.WhatBelongs(property.PropertyType)} belongs here."));
    }

    private static string Came(IConfigurationSection child, bool secret) =>
        child.Value is not { } text ? "a list or section" : secret ? "a secret that cannot be read" : $"'{text}'";

    /// <summary>What is wrong with a setting, with where that came from.</summary>
    public static string WithOrigin(IConfiguration configuration, string key, string error) =>
        SettingOrigins.Of(configuration, key) is var origin && origin is "default" or "set" ? error : $"{error} [{origin}]";
}
