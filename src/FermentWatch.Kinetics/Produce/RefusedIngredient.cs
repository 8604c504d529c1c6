using System.Diagnostics.CodeAnalysis;

namespace FermentWatch.Kinetics.Produce;

/// <summary>Things that make a jar something other than a vegetable ferment: no forecast is given for it, with the reason.</summary>
public static class RefusedIngredient
{
    private static readonly (string Word, string Reason)[] Words =
    [
        ("oil", "oil on top keeps air out and is no seal; it favours germs that need no air"),
        ("meat", "meat needs other rules than vegetables"), ("pork", "meat needs other rules than vegetables"),
        ("beef", "meat needs other rules than vegetables"), ("chicken", "meat needs other rules than vegetables"),
        ("fish", "fish needs other rules than vegetables"), ("oyster", "fish needs other rules than vegetables"),
        ("shrimp", "fish needs other rules than vegetables"), ("anchovy", "fish needs other rules than vegetables"),
        ("milk", "dairy needs other rules than vegetables"), ("cheese", "dairy needs other rules than vegetables"),
        ("dairy", "dairy needs other rules than vegetables"), ("yogurt", "dairy needs other rules than vegetables"),
        ("egg", "eggs need other rules than vegetables"), ("eggs", "eggs need other rules than vegetables"),
        ("bean", "beans sour slowly and hold much protein"), ("beans", "beans sour slowly and hold much protein"),
        ("lentils", "beans sour slowly and hold much protein"), ("chickpeas", "beans sour slowly and hold much protein"),
        ("mushroom", "mushrooms sour slowly and come with soil"), ("mushrooms", "mushrooms sour slowly and come with soil"),
    ];

    /// <summary>Whether this is refused in any amount, and why. Matches whole words, whatever the case.</summary>
    public static bool TryFindReason(string? ingredient, [NotNullWhen(true)] out string? reason)
    {
        reason = null;
        // Green beans are no dried beans.
        if (Vegetable.TryFind(ingredient, out _))
            return false;
        string[] parts = (ingredient ?? "").Split([' ', ',', '-', '/'], StringSplitOptions.RemoveEmptyEntries);
        reason = Words.FirstOrDefault(each => parts.Contains(each.Word, StringComparer.OrdinalIgnoreCase)).Reason;
        return reason is not null;
    }
}
