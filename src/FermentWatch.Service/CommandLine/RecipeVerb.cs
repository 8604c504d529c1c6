using System.CommandLine;
using FermentWatch.Service.CommandLine.Recipes;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>recipe</c>: the household's recipes.</summary>
internal static class RecipeVerb
{
    public static Command Create(CommandContext context) =>
        new("recipe", "Recipes of the household: lists them, scales one, takes one in from a file or writes it as one. Works while the service runs.")
    {
        RecipeListVerb.Create(context),
        RecipeShowVerb.Create(context),
        RecipeImportVerb.Create(context),
        RecipeExportVerb.Create(context),
    };
}
