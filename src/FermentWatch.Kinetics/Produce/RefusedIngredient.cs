using System.Diagnostics.CodeAnalysis;

namespace FermentWatch.Kinetics.Produce;

/// <summary>
/// Things that make a jar something other than a vegetable ferment, by class: refused in any amount, with the reason. Sauces of fish
/// and salted shrimp stand in published kimchi recipes (Cornell Cooperative Extension, Kimchi: fermented vegetables) and are not.
/// Which words belong to a class is common practice, no source.
/// </summary>
public static class RefusedIngredient
{
    private sealed record Class(string Reason, HashSet<string> Words);

    private static readonly Class[] Classes =
    [
        new("oil on top keeps air out and is no seal; it favours germs that need no air", Words("oil")),
        new("meat needs other rules than vegetables", Words(
            "meat", "pork", "beef", "chicken", "ham", "bacon", "sausage", "salami", "chorizo", "lamb", "mutton", "veal", "venison", "turkey",
                "duck", "goose",
            "poultry", "liver", "lard", "tallow", "bone", "broth", "pate")),
        new("fish needs other rules than vegetables", Words(
            "fish", "seafood", "shellfish", "oyster", "anchovy", "shrimp", "prawn", "krill", "squid", "cuttlefish", "octopus", "clam", "mussel",
                "scallop", "crab",
            "lobster", "salmon", "trout", "herring", "mackerel", "tuna", "sardine", "cod", "pollock", "hake", "eel", "roe", "caviar")),
        new("dairy needs other rules than vegetables", Words(
            "dairy", "milk", "buttermilk", "cheese", "yogurt", "yoghurt", "butter", "cream", "whey", "kefir", "curd", "quark", "ghee", "feta",
                "paneer")),
        new("eggs need other rules than vegetables", Words("egg", "mayonnaise")),
        new("beans sour slowly and hold much protein", Words(
            "bean", "soybean", "lentil", "chickpea", "dal", "lupin", "tofu", "tempeh", "natto", "hummus", "peanut")),
        new("mushrooms sour slowly and come with soil", Words(
            "mushroom", "champignon", "shiitake", "porcini", "chanterelle", "truffle", "enoki", "fungus")),
    ];

    /// <summary>Names in which a word of a class means something else.</summary>
    private static readonly string[] OtherThings =
    [
        "fish sauce", "anchovy sauce", "salted shrimp", "fermented shrimp", "shrimp paste", "fermented seafood",
        "green bean", "string bean", "french bean", "runner bean", "wax bean", "snap bean", "pole bean", "long bean", "yardlong bean", "bean sprout",
        "crab apple", "beef tomato", "fish pepper", "fish mint", "butter lettuce", "lamb lettuce", "milk thistle", "egg plant",
    ];

    private static readonly string[] Sauces = OtherThings[..6];

    /// <summary>Whether this is refused in any amount, and why. Matches whole words, in the singular and the plural, whatever the case.</summary>
    public static bool TryFindReason(string? ingredient, [NotNullWhen(true)] out string? reason)
    {
        reason = null;
        // Green beans are no dried beans.
        if (Vegetable.TryFind(ingredient, out _))
            return false;
        string[] words = Without(Plain(ingredient), OtherThings).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        reason = Classes.FirstOrDefault(each => words.Any(each.Words.Contains))?.Reason ?? Pulses(words);
        return reason is not null;
    }

    /// <summary>Whether it is a sauce or paste of fish or shrimp, as published recipes have it.</summary>
    public static bool IsFishSauce(string? ingredient)
    {
        string plain = $" {Plain(ingredient)} ";
        return Array.Exists(Sauces, sauce => plain.Contains($" {sauce} ", StringComparison.Ordinal));
    }

    /// <summary>Peas in the pod are vegetables; dried and split ones are beans.</summary>
    private static string? Pulses(string[] words) =>
        words.Contains("pea") && words.Any(word => word is "split" or "dried" or "dry" or "eyed" or "pigeon")
            ? Classes.First(each => each.Words.Contains("bean")).Reason : null;

    private static string Without(string plain, string[] things) =>
        things.Aggregate($" {plain} ", (left, thing) => left.Replace($" {thing} ", " ", StringComparison.Ordinal));

    /// <summary>Words in lower case and in the singular, a space between.</summary>
    private static string Plain(string? ingredient) => string.Join(' ', (ingredient ?? "").ToLowerInvariant()
        .Replace("'s", "", StringComparison.Ordinal).Replace("\u2019s", "", StringComparison.Ordinal)
        .Split([' ', ',', '-', '/', '(', ')', '.', '+', '&', '\t'], StringSplitOptions.RemoveEmptyEntries).Select(Singular));

    private static string Singular(string word) => word switch
    {
        [.. { Length: > 1 } stem, 'i', 'e', 's'] => stem + "y",
        [.., 's', 's'] or [.., 'u', 's'] => word,
        [.. var stem, 'e', 's'] when stem.EndsWith("sh", StringComparison.Ordinal) || stem.EndsWith("ch", StringComparison.Ordinal)
            || stem.EndsWith('o') => stem,
        [.. { Length: > 1 } stem, 's'] => stem,
        _ => word,
    };

    private static HashSet<string> Words(params string[] words) => [.. words];
}
