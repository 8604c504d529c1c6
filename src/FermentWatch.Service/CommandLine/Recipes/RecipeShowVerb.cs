using System.CommandLine;
using System.Globalization;
using FermentWatch.Acts.Recipes;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Kitchen.Words;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Recipes;

/// <summary><c>recipe show</c>: what goes into each jar and into all, for so much as is asked for.</summary>
internal static class RecipeShowVerb
{
    private static readonly string[] ForPeople = ["what", "in_each", "in_all"], ForMachines = ["what", "each_grams", "all_grams"];

    public static Command Create(CommandContext context)
    {
        Argument<string> name = NamedRecipe.Argument();
        var mass = new Option<string>("--mass") { HelpName = "MASS", Description = "For so much in all, without the salt, such as 4kg." };
        var jars = new Option<string>("--jars") { HelpName = "COUNT", Description = "For so many jars." };
        var vessel = new Option<string>("--vessel") { HelpName = "VOLUME", Description = "Of what size, such as 1l or 1qt." };
        var verb = new Command("show", "Shows a recipe as it was written down, or for a mass, a number of jars or a size of vessel.")
            { name, mass, jars, vessel };
        var form = new OutputForm(verb);
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            var reader = provider.GetRequiredService<RecipeReader>();
            (HouseholdRecipe? recipe, Kinetics.Refusal? refusal) = await NamedRecipe.FindAsync(reader, call.GetValue(name)!, cancellationToken);
            if (recipe is null)
                return context.Refuse([refusal!]);
            var wanted = new ScaleForm { Mass = call.GetValue(mass), Jars = call.GetValue(jars), Vessel = call.GetValue(vessel) };
            return await reader.FindAsync(recipe.Id, wanted, cancellationToken) switch
            {
                { Scaled: { } scaled } asked => Show(asked, scaled, form.Of(call), context),
                var asked => context.Refuse(asked?.Refusals ?? []),
            };
        });
        return verb;
    }

    private static int Show(RecipeAsked asked, ScaledRecipe scaled, OutputKind kind, CommandContext context)
    {
        bool isForPeople = kind == OutputKind.Table;
        MassUnit unit = asked.Household.MassUnit;
        string Amount(double grams) => isForPeople && (grams >= 10 || unit == MassUnit.Pound) ? MeasureWords.Mass(grams / 1000, unit)
            : grams.ToString("0.##", CultureInfo.InvariantCulture) + (isForPeople ? " g" : "");
        Rows.Write(isForPeople ? ForPeople : ForMachines,
            [.. Parts(scaled.Each).Select(part => new[] { part.What, Amount(part.Grams), Amount(scaled.Count * part.Grams) })], kind, context);
        if (!isForPeople)
            return ExitCode.Done;
        context.Output.WriteLine($"For {(scaled.Count == 1 ? "one jar" : $"{scaled.Count} jars")}"
            + $"{(scaled.VesselLitres is { } litres ? $" of {MeasureWords.Volume(litres, unit)}" : "")}, "
            + $"{JarWords.Of(scaled.Each.Cut)}, {Kitchen.Jars.SournessLevel.Of(scaled.Each.Sourness)}.");
        if (asked.Recipe.Mixture.Note.Length > 0)
            context.Output.WriteLine(asked.Recipe.Mixture.Note);
        if (MixtureRules.Odd(asked.Recipe.Mixture) is { } odd)
            context.Output.WriteLine($"Caution: {odd.Question}");
        context.Output.WriteLine($"Caution: {Cautions.LocalGuidanceFirst.Text}");
        return ExitCode.Done;
    }

    private static IEnumerable<(string What, double Grams)> Parts(Mixture each) =>
    [
        .. each.Vegetables.Concat(each.Seasonings).Select(part => (part.Note.Length > 0 ? $"{part.Name}, {part.Note}" : part.Name, part.Grams)),
        .. new[]
        {
            ("water", each.WaterGrams),
            (string.Create(CultureInfo.InvariantCulture, $"vinegar, {each.VinegarPercent:0.##} % acid"), each.VinegarGrams),
            ("brine of an earlier jar", each.StarterGrams),
        }.Where(liquid => liquid.Item2 > 0),
        ("salt", each.Salt.Grams),
    ];
}
