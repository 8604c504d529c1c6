using System.Globalization;
using System.Text.RegularExpressions;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Planning;

/// <summary>Vessels of one size.</summary>
/// <param name="Litres">The size, 0.1 to 250.</param>
/// <param name="Count">How many there are; null: as many as it takes.</param>
public sealed record Vessels(double Litres, int? Count);

/// <summary>Reads <c>20 x 1 qt, 2 x 5 l</c>; a size alone is one of which there are as many as it takes. Sizes may be US or metric, mixed.</summary>
public static partial class VesselList
{
    private const int MostVessels = 500, MostSizes = 6;

    /// <summary>The vessels typed; empty after a refusal.</summary>
    public static IReadOnlyList<Vessels> ReadVessels(this FieldReader reader, string field, string? typed)
    {
        string[] parts = [.. Between().Split((typed ?? "").Trim()).Where(part => part.Length > 0)];
        List<Vessels> read = [.. parts.Select(ReadOne).OfType<Vessels>()];
        bool hasTwice = read.DistinctBy(each => each.Litres).Count() != read.Count;
        if (read.Count == parts.Length && read.Count is > 0 and <= MostSizes && !hasTwice)
            return read;
        reader.Refuse(field, typed, hasTwice ? "each size once would be right, such as 12 x 1 qt, 2 x 5 l"
            : "how many of which size would be right, at most 500 of six sizes, such as 12 x 1 qt, 2 x 5 l; a size alone means as many as it takes");
        return [];
    }

    /// <summary>How it is typed: in quarts where the household weighs in pounds.</summary>
    public static string Write(IEnumerable<Vessels> vessels, MassUnit unit) => string.Join(", ", vessels.Select(each =>
        (each.Count is { } count ? string.Create(CultureInfo.InvariantCulture, $"{count} x ") : "") + Size(each.Litres, unit)));

    /// <summary>A size as it is typed.</summary>
    public static string Size(double litres, MassUnit unit) => unit == MassUnit.Pound
        ? string.Create(CultureInfo.InvariantCulture, $"{litres / CustomaryUnits.LitresPerQuart:0.###} qt")
        : string.Create(CultureInfo.InvariantCulture, $"{litres:0.###} l");

    private static Vessels? ReadOne(string part)
    {
        Match counted = Counted().Match(part);
        int? count = counted.Success ? int.Parse(counted.Groups["count"].Value, CultureInfo.InvariantCulture) : null;
        string size = counted.Success ? counted.Groups["size"].Value : part;
        return count is null or (>= 1 and <= MostVessels) && Amount.VolumeLitres.TryRead(Unit().Replace(size, "1 $1"), null, out double litres)
            && litres is >= 0.1 and <= 250 ? new Vessels(litres, count) : null;
    }

    /// <summary>What stands between two sizes; a comma within a number (0,5 l) does not.</summary>
    [GeneratedRegex(@"[\n;]\s*|(?<!\d),\s*|,(?!\d)\s*")]
    private static partial Regex Between();

    [GeneratedRegex(@"^(?<count>\d{1,4})\s*(?:[x×*]\s*(?<size>.+)|(?<size>(?:pints?|quarts?|gallons?|litres?)))$", RegexOptions.IgnoreCase)]
    private static partial Regex Counted();

    /// <summary>A unit alone is one of it: <c>12 quarts</c> are twelve of a quart.</summary>
    [GeneratedRegex(@"^\s*(\p{L}+)\s*$")]
    private static partial Regex Unit();
}
