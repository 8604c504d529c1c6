using System.Globalization;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Web.Pages.Rounds;

/// <summary>Jars and what was seen at them, as an address carries them on: <c>4-Film,8-Slime,</c>.</summary>
internal static class GuideList
{
    private const int Most = 100;

    /// <summary>What can be read of it; what cannot is left out.</summary>
    public static IReadOnlyList<(int Number, SightingKind Kind)> Read(string? carried) =>
    [
        .. (carried ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries).Take(Most).Select(each => each.Split('-'))
            .Where(parts => parts.Length == 2 && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out _)
                && Enum.TryParse(parts[1], out SightingKind kind) && Enum.IsDefined(kind))
            .Select(parts => (int.Parse(parts[0], CultureInfo.InvariantCulture), Enum.Parse<SightingKind>(parts[1]))),
    ];
}
