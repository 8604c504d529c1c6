using System.Globalization;

namespace FermentWatch.Service.Settings;

/// <summary>One setting as text: how each kind is read and shown, in the invariant culture.</summary>
internal static class SettingText
{
    /// <summary>Reads a setting of a type; false where the text is none.</summary>
    /// <exception cref="NotSupportedException">An options class has a property of a kind this does not know.</exception>
    public static bool TryRead(string text, Type type, out object? value)
    {
        value = null;
        if (type == typeof(string))
            value = text;
        else if (type == typeof(bool))
            value = bool.TryParse(text, out bool flag) ? flag : null;
        else if (type == typeof(int))
            value = int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int whole) ? whole : null;
        else if (type == typeof(double))
            value = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
                && double.IsFinite(number) ? number : null;
        else if (type == typeof(TimeSpan))
            // Without a colon TimeSpan reads days, which nobody who types 10 for ten seconds expects.
            value = text.Contains(':', StringComparison.Ordinal) && TimeSpan.TryParse(text, CultureInfo.InvariantCulture, out TimeSpan span) ? span
                : null;
        else if (type.IsEnum)
            value = Enum.TryParse(type, text, ignoreCase: true, out object? choice) && Enum.IsDefined(type, choice) ? choice : null;
        else
            throw new NotSupportedException($"Settings of the type {type.Name} are not read.");
        return value is not null;
    }

    public static string Show(object? value) => value switch
    {
        null => "",
        bool flag => flag ? "true" : "false",
        IFormattable formattable => formattable.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    /// <summary>What belongs into a setting of a type.</summary>
    public static string WhatBelongs(Type type) =>
        type == typeof(bool) ? "true or false"
        : type == typeof(int) ? "a whole number"
        : type == typeof(double) ? "a number with a point"
        : type == typeof(TimeSpan) ? "a time like 00:10:00"
        : type.IsEnum ? $"one of {string.Join(", ", Enum.GetNames(type))}"
        : "text";
}
