using System.Globalization;
using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kinetics.Recipe;

internal static class RecipeRules
{
    private const double MostKilograms = 250;
    private const double UnknownShare = 0.05;

    public static IReadOnlyList<Refusal> Check(JarRecipe recipe)
    {
        var refusals = new List<Refusal>();
        CheckShares(recipe, refusals);
        CheckSalt(recipe.Salt, refusals);
        Within(refusals, "added water", recipe.AddedWaterKilograms, 0, MostKilograms, "kg");
        if (recipe.VesselLitres is { } litres)
            Within(refusals, "vessel", litres, 0.1, 250, "litres");
        CheckUnknown(recipe, refusals);
        if (recipe.Vinegar is { } vinegar)
        {
            Within(refusals, "vinegar", vinegar.MassKilograms, 0, MostKilograms, "kg");
            Within(refusals, "vinegar strength", vinegar.AceticPercent, 0, 25, "% acetic acid");
        }
        if (recipe.StarterBrine is { } brine)
        {
            Within(refusals, "starter brine", brine.MassKilograms, 0, MostKilograms, "kg");
            Within(refusals, "starter brine acidity", brine.AcidityPercentLactic, 0, 4, "% lactic");
        }
        if (!Enum.IsDefined(recipe.Cut))
            refusals.Add(new("cut", $"{(int)recipe.Cut}", $"one of {string.Join(", ", Enum.GetNames<Cut>())} would be right"));
        return refusals;
    }

    private static void CheckShares(JarRecipe recipe, List<Refusal> refusals)
    {
        if (recipe.Shares.Count == 0)
            refusals.Add(new("vegetables", "nothing", "at least one vegetable of the catalogue would be right"));
        foreach (ProduceShare share in recipe.Shares)
        {
            if (!(share.MassKilograms > 0) || share.MassKilograms > MostKilograms)
                refusals.Add(new($"mass of {share.Vegetable.Name}", Show(share.MassKilograms, "kg"),
                    $"above 0 and at most {MostKilograms} kg would be right"));
        }
    }

    private static void CheckSalt(SaltDose salt, List<Refusal> refusals)
    {
        bool inRange = salt.Percent is >= SaltDose.LowestPercent and <= SaltDose.HighestPercent;
        if (!inRange)
            refusals.Add(new("salt", Show(salt.Percent, "%"),
                $"1.5 to 8 % of vegetables and added water together would be right: {Why(salt.Percent)}"));
        if (!(salt.StandardDeviationPercent >= 0) || (inRange && salt.StandardDeviationPercent > 3))
            refusals.Add(new("spread of the salt", Show(salt.StandardDeviationPercent, "percentage points"),
                "0 to 3 percentage points would be right"));
    }

    private static string Why(double percent) => percent > SaltDose.HighestPercent
        ? "with more salt the lactic acid bacteria hardly work"
        : "with less salt the wrong germs keep up with the lactic acid bacteria";

    private static void CheckUnknown(JarRecipe recipe, List<Refusal> refusals)
    {
        Within(refusals, "other ingredients", recipe.UnknownKilograms, 0, MostKilograms, "kg");
        double produce = recipe.ProduceKilograms;
        if (produce > 0 && recipe.UnknownKilograms > UnknownShare * produce)
        {
            refusals.Add(new("other ingredients", Show(recipe.UnknownKilograms, "kg"),
                $"at most a twentieth of the vegetables, {Show(UnknownShare * produce, "kg")}, would be right: the model has no figures for them"));
        }
    }

    private static void Within(List<Refusal> refusals, string field, double value, double low, double high, string unit)
    {
        if (!(value >= low && value <= high))
            refusals.Add(new(field, Show(value, unit), string.Create(CultureInfo.InvariantCulture, $"{low} to {high} {unit} would be right")));
    }

    private static string Show(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:0.###} {unit}");
}
