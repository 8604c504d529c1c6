using System.CommandLine;
using FermentWatch.Acts.Recipes;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Service.CommandLine.Recipes;

/// <summary>The recipe that a call names, whatever the case.</summary>
internal static class NamedRecipe
{
    public static Argument<string> Argument() => new("NAME") { Description = "What the household calls it." };

    /// <summary>The recipe; or, where there is none of that name, the one that was probably meant.</summary>
    public static async Task<(HouseholdRecipe? Recipe, Refusal? Refusal)> FindAsync(RecipeReader reader, string name,
        CancellationToken cancellationToken)
    {
        IReadOnlyList<HouseholdRecipe> all = (await reader.AllAsync(cancellationToken)).Recipes;
        if (all.FirstOrDefault(each => each.Name.Equals(name, StringComparison.OrdinalIgnoreCase)) is { } recipe)
            return (recipe, null);
        string? nearest = NearestName.Of(name, [.. all.Select(each => each.Name)]);
        return (null, new Refusal("name", name, nearest is null ? "a name that 'fermentwatch recipe list' shows would be right"
            : $"did you mean {nearest}?"));
    }
}
