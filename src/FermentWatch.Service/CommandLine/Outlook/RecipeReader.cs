using System.Diagnostics.CodeAnalysis;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>Reads what went into the jar.</summary>
internal static class RecipeReader
{
    private const double MostKilograms = 250;

    public static JarRecipe Read(OutlookInput input, FieldReader reader)
    {
        List<ProduceShare> shares = ReadProduce(input, reader);
        return new JarRecipe
        {
            Shares = shares,
            Cut = reader.ReadChoice("cut", input.Cut, shares.Count > 0 ? shares[0].Vegetable.UsualCut : Cut.Shredded),
            Salt = ReadSalt(input.Salt, reader),
            AddedWaterKilograms = input.Water is null ? 0 : ReadLiquid("water", input.Water, reader),
            UnknownKilograms = input.Seasonings is null ? 0
                : reader.Read("seasonings", input.Seasonings, Amount.MassKilograms, null, 0, MostKilograms, "0 to 250 kg"),
            VesselLitres = input.Vessel is null ? null
                : reader.Read("vessel", input.Vessel, Amount.VolumeLitres, null, 0.1, 250, "0.1 to 250 litres"),
            StarterBrine = ReadWithStrength("starter", input.Starter, 4, "100g=0.9%", reader) is { } brine
                ? new StarterBrine(brine.Kilograms, brine.Percent) : null,
            Vinegar = ReadWithStrength("vinegar", input.Vinegar, 25, "60g=5%", reader) is { } vinegar
                ? new Vinegar(vinegar.Kilograms, vinegar.Percent) : null,
        };
    }

    private static List<ProduceShare> ReadProduce(OutlookInput input, FieldReader reader)
    {
        var shares = new List<ProduceShare>();
        // One vegetable alone is a kilogram unless somebody says otherwise; beside anything else its mass matters.
        bool massNeeded = input.Produce.Count > 1 || input.Water is not null || input.Seasonings is not null || input.Starter is not null
            || input.Vinegar is not null;
        foreach (string typed in input.Produce)
        {
            string[] sides = typed.Split('=', 2, StringSplitOptions.TrimEntries);
            double kilograms = 1;
            if (!Vegetable.TryFind(sides[0], out Vegetable? vegetable))
                reader.Refuse("produce", typed, RefusedIngredient.TryFindReason(sides[0], out string? reason)
                    ? $"leave it out: {reason}" : $"one of {string.Join(", ", Vegetable.All)} would be right");
            else if (sides.Length == 1 ? massNeeded : !Amount.MassKilograms.TryRead(sides[1], null, out kilograms)
                || kilograms is not (> 0 and <= MostKilograms))
                reader.Refuse("produce", typed, $"a mass above 0 and at most 250 kg would be right, such as {vegetable}=2kg");
            else
                shares.Add(new ProduceShare(vegetable, kilograms));
        }
        if (input.Produce.Count == 0)
            reader.Refuse("produce", null, "at least one vegetable would be right, such as --produce cabbage or --produce cabbage=2kg");
        return shares;
    }

    private static SaltDose ReadSalt(string? typed, FieldReader reader)
    {
        if (typed is not null && typed.Trim().Replace('-', ' ').ToUpperInvariant() is "BY TASTE" or "TASTE")
            return SaltDose.ByTaste;
        if (Amount.Percent.TryRead(typed, "%", out double percent))
            // Out of range the recipe's own rule refuses it, with the reason; its spread is then no trouble of its own.
            return percent is >= SaltDose.LowestPercent and <= SaltDose.HighestPercent ? SaltDose.Weighed(percent) : new SaltDose(percent, 0);
        reader.Refuse("salt", typed, "1.5 to 8 % of vegetables and added water together would be right, such as 2.25%, or 'by taste'");
        return SaltDose.ByTaste;
    }

    private static double ReadLiquid(string field, string typed, FieldReader reader)
    {
        if (LiquidMass.TryRead(typed, LiquidMass.WaterKilogramsPerLitre, out double kilograms) && kilograms is >= 0 and <= MostKilograms)
            return kilograms;
        reader.Refuse(field, typed, $"0 to 250 kg would be right, such as 500g or {Amount.VolumeLitres.Example}");
        return 0;
    }

    private static (double Kilograms, double Percent)? ReadWithStrength(string field, string? typed, double mostPercent, string example,
        FieldReader reader)
    {
        if (typed is null)
            return null;
        string[] sides = typed.Split('=', 2, StringSplitOptions.TrimEntries);
        if (sides.Length == 2 && LiquidMass.TryRead(sides[0], LiquidMass.WaterKilogramsPerLitre, out double kilograms)
            && kilograms is >= 0 and <= MostKilograms
            && Amount.Percent.TryRead(sides[1], "%", out double percent) && percent >= 0 && percent <= mostPercent)
            return (kilograms, percent);
        reader.Refuse(field, typed, $"a mass and its acid, 0 to {mostPercent} %, would be right, such as {example}");
        return null;
    }
}

/// <summary>A level with the words somebody asked for it.</summary>
/// <param name="Name">As typed, without spaces around it.</param>
/// <param name="Level">The level.</param>
internal sealed record NamedTarget(string Name, ForecastTarget Level)
{
    private const string SournessPrefix = "sourness=";

    /// <summary>Reads <c>ph=4.6</c>, <c>acidity=1.5</c>, <c>sourness=60</c>, or a step of sourness in words with or without
    /// <c>sourness=</c>.</summary>
    public static bool TryRead(string typed, [NotNullWhen(true)] out NamedTarget? target, [NotNullWhen(false)] out Refusal? refusal)
    {
        string name = typed.Trim();
        string words = name.StartsWith(SournessPrefix, StringComparison.OrdinalIgnoreCase) ? name[SournessPrefix.Length..] : name;
        SournessLevel? step = SournessLevel.All.FirstOrDefault(level =>
            level.Words.Equals(words.Replace('-', ' '), StringComparison.OrdinalIgnoreCase));
        refusal = null;
        if (step is not null)
            target = new NamedTarget(name, new ForecastTarget(TargetKind.AcidityPercentLactic, step.AcidityPercentLactic));
        else
            target = ForecastTarget.TryParse(name, out ForecastTarget? level, out refusal) ? new NamedTarget(name, level) : null;
        return target is not null;
    }
}
