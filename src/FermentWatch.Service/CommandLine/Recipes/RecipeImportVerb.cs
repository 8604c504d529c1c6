using System.CommandLine;
using FermentWatch.Acts;
using FermentWatch.Acts.Recipes;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Recipes;

/// <summary><c>recipe import</c>: a recipe out of a file that another household handed over.</summary>
internal static class RecipeImportVerb
{
    public static Command Create(CommandContext context)
    {
        var from = new Argument<string>("FILE") { Description = "What 'recipe export' or \"Save as a file\" wrote." };
        var replace = new Option<bool>("--replace") { Description = "In the place of the recipe that has its name." };
        var right = new Option<bool>("--it-is-right") { Description = "What looks odd is right." };
        var verb = new Command("import", "Takes in a recipe from a file, which is refused as a whole where anything in it cannot be.")
            { from, replace, right };
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            if (await ReadAsync(call.GetValue(from)!, context, cancellationToken) is not { } file)
                return ExitCode.Failed;
            Guid id = call.GetValue(replace) ? await IdOfAsync(file, provider.GetRequiredService<RecipeReader>(), cancellationToken) : Guid.Empty;
            var mark = new EntryMark(id == Guid.Empty ? Guid.CreateVersion7(context.Clock.GetUtcNow()) : id, new Person("command line"),
                MemberRole.Adult);
            RecipeKept kept = await provider.GetRequiredService<KeepRecipe>().TakeInAsync(file, call.GetValue(right), mark, cancellationToken);
            if (kept.Recipe is not { } recipe)
                return context.Refuse([.. kept.Refusals,
                    .. kept.Doubts.Select(doubt => new Refusal(doubt.Field, "odd", $"{doubt.Question} Then say it again with --it-is-right"))]);
            await context.Output.WriteLineAsync($"Kept as {recipe.Name}.");
            return ExitCode.Done;
        });
        return verb;
    }

    /// <summary>One byte more than is taken at most; null where it cannot be read, which is said.</summary>
    private static async Task<byte[]?> ReadAsync(string path, CommandContext context, CancellationToken cancellationToken)
    {
        try
        {
            await using FileStream stream = File.OpenRead(path);
            byte[] buffer = new byte[RecipeFile.LongestBytes + 1];
            return buffer[..await stream.ReadAtLeastAsync(buffer, buffer.Length, throwOnEndOfStream: false, cancellationToken)];
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            context.Fail(trouble.Message);
            return null;
        }
    }

    /// <summary>The id of the recipe that has the file's name; empty where none has.</summary>
    private static async Task<Guid> IdOfAsync(byte[] file, RecipeReader reader, CancellationToken cancellationToken)
    {
        string name = RecipeFile.Read(file).Name;
        return (await NamedRecipe.FindAsync(reader, name, cancellationToken)).Recipe?.Id ?? Guid.Empty;
    }
}
