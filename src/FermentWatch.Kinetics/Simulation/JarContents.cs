using FermentWatch.Kinetics.Chemistry;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// A recipe in the model's terms, per litre of all the water in the jar: what evens out at last, how it stands at packing,
/// and how fast it moves.
/// </summary>
internal sealed record JarContents
{
    /// <summary>The vegetables' own solutes evened out over all the water.</summary>
    public required AcidMixture Native { get; init; }

    /// <summary>What vinegar and starter brine bring, in the brine at packing, mol per litre of brine.</summary>
    public required double AddedLactic { get; init; }

    /// <summary>Acetic acid of the vinegar, mol per litre of brine.</summary>
    public required double AddedAcetic { get; init; }

    /// <summary>Hexose evened out over all the water, mol/L.</summary>
    public required double Hexose { get; init; }

    /// <summary>Brine and drawn juice, share of all the water.</summary>
    public required double OuterShare { get; init; }

    /// <summary>The vegetables' solutes in the brine at packing, of what evens out at last.</summary>
    public required double OuterStart { get; init; }

    /// <summary>Exchange between pieces and brine, 1/h.</summary>
    public required double ExchangePerHour { get; init; }

    /// <summary>Salt, per cent of vegetables and added water.</summary>
    public required double SaltPercent { get; init; }

    /// <summary>First counts by guild, 1e9 CFU/mL.</summary>
    public required IReadOnlyList<double> FirstCounts { get; init; }

    /// <summary>Count at which a guild's growth ends for want of room, 1e9 CFU/mL.</summary>
    public required double Room { get; init; }

    /// <summary>How many times wider than cabbage's the spread of what the vegetables brought is taken.</summary>
    public double Ignorance { get; init; } = 1;

    /// <summary>Volume of the vessel, litres.</summary>
    public required double VesselLitres { get; init; }

    public static JarContents Of(JarRecipe recipe, ModelParameters model)
    {
        double produceWater = recipe.Shares.Sum(WaterOf);
        double starter = recipe.StarterBrine?.MassKilograms ?? 0;
        double added = recipe.AddedWaterKilograms + starter + (recipe.Vinegar?.MassKilograms ?? 0);
        double water = produceWater + added;
        double drawn = model.DrawnJuice[(int)recipe.Cut] * produceWater;
        double outer = Math.Clamp((drawn + added) / water, 0.02, 0.98);
        var native = new AcidMixture(0, 0, 0, 0, 0, 0, 0, 0);
        double hexose = 0;
        double[] counts = new double[ModelParameters.GuildCount];
        foreach (ProduceShare share in recipe.Shares)
        {
            double part = WaterOf(share) / water;
            native = Sum(native, RawJuice.Of(share.Vegetable, model.StrongIonShareOf(share.Vegetable)), part);
            hexose += part * RawJuice.Hexose(share.Vegetable);
            for (int g = 0; g < counts.Length; g++)
                counts[g] += part * Math.Pow(10, model.FirstCounts[(int)share.Vegetable.Flora][g] - 9);
        }
        AddStarter(counts, starter / water);
        double brine = outer * water;
        return new()
        {
            Native = native with { Salt = SaltMoles(recipe, water) },
            AddedLactic = starter * (recipe.StarterBrine?.AcidityPercentLactic ?? 0) / TitratableAcidity.PercentLacticPerMole / brine,
            AddedAcetic = (recipe.Vinegar is { } vinegar ? vinegar.MassKilograms * vinegar.AceticPercent * 10 / 60.05 : 0) / brine,
            Hexose = hexose,
            OuterShare = outer,
            OuterStart = Math.Min(1, drawn / produceWater / outer),
            ExchangePerHour = model.ExchangePerHour[(int)recipe.Cut],
            SaltPercent = recipe.Salt.Percent,
            FirstCounts = counts,
            Room = Math.Exp(recipe.Shares.Sum(share => WaterOf(share) * Math.Log(model.Rooms[(int)share.Vegetable.Flora])) / produceWater),
            Ignorance = recipe.Shares.Sum(share => WaterOf(share) * share.Vegetable.Ignorance) / produceWater,
            VesselLitres = recipe.VesselLitres ?? Math.Clamp((recipe.ProduceKilograms + added) * 1.1, 0.1, 250),
        };
    }

    /// <summary>Finished brine carries some 3e8 finishers and a tenth as many starters a mL: from memory, common practice.</summary>
    private static void AddStarter(double[] counts, double share)
    {
        counts[0] += 0.03 * share;
        counts[2] += 0.3 * share;
    }

    private static double WaterOf(ProduceShare share) => share.MassKilograms * share.Vegetable.Composition.WaterGrams / 100;

    private static double SaltMoles(JarRecipe recipe, double water) =>
        recipe.Salt.Percent * 10 * (recipe.ProduceKilograms + recipe.AddedWaterKilograms) / Salt.BrineDensity.MolarMassGrams / water;

    private static AcidMixture Sum(AcidMixture sum, AcidMixture juice, double part) => new(
        sum.StrongIonDifference + (part * juice.StrongIonDifference), 0, 0, sum.Malic + (part * juice.Malic),
        sum.Citric + (part * juice.Citric), sum.Phosphate + (part * juice.Phosphate), sum.SideChain + (part * juice.SideChain), 0);
}
