using System.Reflection;

namespace FermentWatch.Service.Settings;

/// <summary>Which settings are never printed: those named so in any room's options class, whatever its packages.</summary>
internal static class SecretSettings
{
    private static readonly string[] Endings = ["Password", "Secret", "Token"];

    public static bool Holds(PropertyInfo setting) =>
        Endings.Any(ending => setting.Name.EndsWith(ending, StringComparison.Ordinal));
}
