using System.Globalization;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>
/// Cabbage by the head. USDA SR 11109 (cabbage, raw): heads of 714, 908 and 1248 g small, medium and large, 20 % refuse.
/// </summary>
public static class HeadsOfCabbage
{
    private const double Yield = 0.8;

    private static readonly (string Size, double Kilograms)[] Sizes = [("small", 0.714), ("large", 1.248), ("medium", 0.908), ("", 0.908)];

    /// <summary>Reads <c>2 heads</c>, <c>1 small head</c>, <c>3 large heads</c> as prepared mass in kilograms.</summary>
    public static bool TryRead(string? text, out double preparedKilograms)
    {
        preparedKilograms = 0;
        string[] words = (text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (words.Length is < 2 or > 3 || words[^1] is not ("head" or "heads")
            || !double.TryParse(words[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double heads) || heads > 200)
            return false;
        string size = words.Length == 3 ? words[1] : "";
        var known = Sizes.Where(entry => entry.Size == size).ToList();
        if (known.Count == 0)
            return false;
        preparedKilograms = heads * known[0].Kilograms * Yield;
        return true;
    }
}
