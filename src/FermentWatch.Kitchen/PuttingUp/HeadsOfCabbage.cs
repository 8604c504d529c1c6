using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>
/// Cabbage by the head. USDA SR 11109 (cabbage, raw): heads of 714, 908 and 1248 g small, medium and large, 20 % refuse.
/// </summary>
public static class HeadsOfCabbage
{
    private const double Yield = 0.8;
    private const double MostHeads = 200;

    private static readonly (string Size, double Kilograms)[] Sizes = [("small", 0.714), ("large", 1.248), ("medium", 0.908)];

    /// <summary>Reads <c>2 heads</c>, <c>1/2 head</c>, <c>half a head</c>, <c>3 large heads</c> as prepared mass in kilograms.</summary>
    public static bool TryRead(string? text, out double preparedKilograms)
    {
        preparedKilograms = 0;
        var words = (text ?? "").ToLowerInvariant().Replace("half a", "1/2", StringComparison.Ordinal)
            .Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).ToList();
        if (words.Count < 2 || words[^1] is not ("head" or "heads"))
            return false;
        words.RemoveAt(words.Count - 1);
        double each = Sizes.First(size => size.Size == "medium").Kilograms;
        if (Sizes.FirstOrDefault(size => size.Size == words[^1]) is { Size: not null } named)
        {
            each = named.Kilograms;
            words.RemoveAt(words.Count - 1);
        }
        if (!Amount.Number.TryRead(string.Join(' ', words), null, out double heads) || heads is < 0 or > MostHeads)
            return false;
        preparedKilograms = heads * each * Yield;
        return true;
    }
}
