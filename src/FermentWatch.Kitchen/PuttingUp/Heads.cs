using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>Vegetables by the head.</summary>
public static class Heads
{
    private const double MostHeads = 200;

    /// <summary>What a head of it weighs, or of its kin (a Savoy cabbage is a cabbage); null where nobody counts it by the head.</summary>
    public static HeadMass? Of(string produce) =>
        (Vegetable.TryFind(produce, out Vegetable? vegetable) ? vegetable : Vegetable.All.FirstOrDefault(each => IsKin(each, produce)))?.Head;

    /// <summary>Reads <c>2 heads</c>, <c>1/2 head</c>, <c>half a head</c>, <c>3 large heads</c> as prepared mass in kilograms.</summary>
    public static bool TryRead(string? text, HeadMass head, out double preparedKilograms)
    {
        preparedKilograms = 0;
        var words = (text ?? "").ToLowerInvariant().Replace("half a", "1/2", StringComparison.Ordinal)
            .Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).ToList();
        if (words.Count < 2 || words[^1] is not ("head" or "heads"))
            return false;
        words.RemoveAt(words.Count - 1);
        double? named = words[^1] switch
        {
            "small" => head.SmallKilograms,
            "medium" => head.MediumKilograms,
            "large" => head.LargeKilograms,
            _ => null,
        };
        if (named is not null)
            words.RemoveAt(words.Count - 1);
        if (!Amount.Number.TryRead(string.Join(' ', words), null, out double heads) || heads is < 0 or > MostHeads)
            return false;
        preparedKilograms = heads * (named ?? head.MediumKilograms) * head.PreparedShare;
        return true;
    }

    private static bool IsKin(Vegetable vegetable, string produce) =>
        vegetable.Head is not null && produce.Contains(vegetable.Name, StringComparison.Ordinal);
}
