using System.CommandLine;
using System.Globalization;
using FermentWatch.Acts.Recipes;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Service.CommandLine.Records;
using NodaTime.Text;

namespace FermentWatch.Service.CommandLine.Recipes;

/// <summary><c>recipe list</c>: every recipe, by name.</summary>
internal static class RecipeListVerb
{
    private static readonly string[] Columns = ["name", "vegetables", "salt_percent", "allergens", "changed_at", "by"];

    public static Command Create(CommandContext context)
    {
        var verb = new Command("list", "Lists recipes by name, with salt in per cent of vegetables and added water together.");
        var form = new OutputForm(verb);
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            IReadOnlyList<HouseholdRecipe> all = (await provider.GetRequiredService<RecipeReader>().AllAsync(cancellationToken)).Recipes;
            Rows.Write(Columns, [.. all.Select(Row)], form.Of(call), context);
            return ExitCode.Done;
        });
        return verb;
    }

    private static string[] Row(HouseholdRecipe recipe) =>
    [
        recipe.Name, string.Join(", ", recipe.Mixture.Vegetables.Select(part => part.Name)),
        recipe.Mixture.Salt.Percent.ToString("0.##", CultureInfo.InvariantCulture), string.Join(", ", recipe.Mixture.ToBeMadeKnown),
        InstantPattern.General.Format(recipe.ChangedAt), recipe.By,
    ];
}
