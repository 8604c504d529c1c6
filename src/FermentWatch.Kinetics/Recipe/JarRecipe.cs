using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kinetics.Recipe;

/// <summary>What went into a jar. Make one, ask <see cref="Check"/>, and show every refusal at once.</summary>
public sealed record JarRecipe
{
    /// <summary>The vegetables, each above zero.</summary>
    public required IReadOnlyList<ProduceShare> Shares { get; init; }

    /// <summary>How the largest pieces were cut.</summary>
    public required Cut Cut { get; init; }

    /// <summary>Salt as per cent of vegetables and added water together, 1.5 to 8.</summary>
    public required SaltDose Salt { get; init; }

    /// <summary>Water added as such or in brine, kg, not counting salt.</summary>
    public double AddedWaterKilograms { get; init; }

    /// <summary>Volume of the vessel, litres, 0.1 to 250. Null: taken from what went in.</summary>
    public double? VesselLitres { get; init; }

    /// <summary>Seasonings and anything the catalogue does not know, kg: at most a twentieth of the vegetables.</summary>
    public double UnknownKilograms { get; init; }

    /// <summary>Vinegar, if any.</summary>
    public Vinegar? Vinegar { get; init; }

    /// <summary>Starter brine, if any.</summary>
    public StarterBrine? StarterBrine { get; init; }

    /// <summary>Vegetables, kg.</summary>
    public double ProduceKilograms => Shares.Sum(share => share.MassKilograms);

    /// <summary>A recipe of one vegetable, one kilogram, salt weighed.</summary>
    public static JarRecipe Of(Vegetable vegetable, Cut cut, double saltPercent) => new()
    {
        Shares = [new ProduceShare(vegetable, 1.0)],
        Cut = cut,
        Salt = SaltDose.Weighed(saltPercent),
    };

    /// <summary>Everything about the recipe that keeps it from a forecast; empty when it can be used.</summary>
    public IReadOnlyList<Refusal> Check() => RecipeRules.Check(this);
}

/// <summary>Brine of an earlier ferment added as a starter. Only from a jar with a counted reading and no trouble.</summary>
/// <param name="MassKilograms">Mass added, kg.</param>
/// <param name="AcidityPercentLactic">Its titratable acidity, per cent lactic.</param>
public sealed record StarterBrine(double MassKilograms, double AcidityPercentLactic);

/// <summary>Vinegar added at packing.</summary>
/// <param name="MassKilograms">Mass added, kg.</param>
/// <param name="AceticPercent">Its strength, per cent acetic acid by mass; table vinegar is 5.</param>
public sealed record Vinegar(double MassKilograms, double AceticPercent);

/// <summary>Salt as per cent of vegetables and added water together, and how well it is known.</summary>
/// <param name="Percent">Best estimate, per cent.</param>
/// <param name="StandardDeviationPercent">Standard deviation of the estimate, percentage points, zero or more.</param>
public sealed record SaltDose(double Percent, double StandardDeviationPercent)
{
    /// <summary>Least salt that gets a forecast, per cent.</summary>
    public const double LowestPercent = 1.5;

    /// <summary>Most salt that gets a forecast, per cent.</summary>
    public const double HighestPercent = 8.0;

    /// <summary>Salted by taste: 1.5 to 3.5 %, taken as the 95 % range of a normal distribution.</summary>
    public static SaltDose ByTaste { get; } = new(2.5, 0.5);

    /// <summary>Salt and vegetables weighed: known to about a twentieth.</summary>
    public static SaltDose Weighed(double percent) => new(percent, 0.05 * percent);

    /// <summary>Salt by the spoon: the same words mean amounts that differ by half (see the salt measures).</summary>
    public static SaltDose BySpoon(double percent) => new(percent, 0.15 * percent);
}
