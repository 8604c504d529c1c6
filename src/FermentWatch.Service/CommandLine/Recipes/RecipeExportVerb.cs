using System.CommandLine;
using System.Text;
using FermentWatch.Acts.Recipes;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Recipes;

/// <summary><c>recipe export</c>: a recipe as a file that households hand to each other.</summary>
internal static class RecipeExportVerb
{
    public static Command Create(CommandContext context)
    {
        Argument<string> name = NamedRecipe.Argument();
        var to = new Option<string>("--to") { HelpName = "FILE", Description = "The file to write, not there yet; printed without it." };
        var verb = new Command("export", "Writes a recipe as a file that 'recipe import' and other households take in.") { name, to };
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            (HouseholdRecipe? recipe, Refusal? refusal) =
                await NamedRecipe.FindAsync(provider.GetRequiredService<RecipeReader>(), call.GetValue(name)!, cancellationToken);
            if (recipe is null)
                return context.Refuse([refusal!]);
            byte[] file = RecipeFile.Write(recipe.Name, recipe.Mixture);
            if (call.GetValue(to) is { } path)
                return await WriteAsync(path, file, context, cancellationToken);
            await context.Output.WriteLineAsync(Encoding.UTF8.GetString(file));
            return ExitCode.Done;
        });
        return verb;
    }

    private static async Task<int> WriteAsync(string path, byte[] file, CommandContext context, CancellationToken cancellationToken)
    {
        if (File.Exists(path) || Directory.Exists(path))
            return context.Refuse([new Refusal("to", path, "the name of a file that is not there yet would be right")]);
        try
        {
            await File.WriteAllBytesAsync(path, file, cancellationToken);
            await context.Output.WriteLineAsync(path);
            return ExitCode.Done;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return context.Fail(trouble.Message);
        }
    }
}
