using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Labels;
using FermentWatch.Kitchen.PuttingUp;
using NodaTime;

namespace FermentWatch.Kitchen.Recipes;

/// <summary>A mixture that a household keeps.</summary>
public sealed class HouseholdRecipe
{
    public required Guid Id { get; init; }

    /// <summary>What the household calls it; unique in the household, whatever the case.</summary>
    public required string Name { get; set; }

    /// <summary>What it is made of.</summary>
    public required Mixture Mixture { get; set; }

    /// <summary>When it was kept as it stands.</summary>
    public required Instant ChangedAt { get; set; }

    /// <summary>Who kept it.</summary>
    public required string By { get; set; }
}

/// <summary>What a recipe is made of, for as much as it was written down for; it is scaled to any mass.</summary>
public sealed record Mixture
{
    /// <summary>Vegetables as prepared, the one of which it is named first.</summary>
    public required IReadOnlyList<MixturePart> Vegetables { get; init; }

    /// <summary>Seasonings.</summary>
    public required IReadOnlyList<MixturePart> Seasonings { get; init; }

    /// <summary>Water that is added, g; 0 where there is none.</summary>
    public double WaterGrams { get; init; }

    /// <summary>Vinegar, g; 0 where there is none.</summary>
    public double VinegarGrams { get; init; }

    /// <summary>Its acetic acid, per cent by mass.</summary>
    public double VinegarPercent { get; init; } = UsualVinegarPercent;

    /// <summary>Brine of an earlier jar to start it with, g; 0 where there is none. Which jar is said when it is put up.</summary>
    public double StarterGrams { get; init; }

    /// <summary>What table vinegar has.</summary>
    public const double UsualVinegarPercent = 5;

    /// <summary>Salt, per cent of what <see cref="SaltOf"/> says.</summary>
    public required double SaltPercent { get; init; }

    /// <summary>What the per cent are of.</summary>
    public SaltBasis SaltOf { get; init; } = SaltBasis.VegetablesAndWater;

    /// <summary>How sour it should be.</summary>
    public required Sourness Sourness { get; init; }

    /// <summary>How it is cut.</summary>
    public required Cut Cut { get; init; }

    /// <summary>What is to be made known to whoever eats of it, as the household wrote it.</summary>
    public IReadOnlyList<string> Allergens { get; init; } = [];

    /// <summary>A note; empty where there is none.</summary>
    public string Note { get; init; } = "";

    /// <summary>Vegetables and seasonings, g.</summary>
    public double SolidGrams => Vegetables.Concat(Seasonings).Sum(part => part.Grams);

    /// <summary>What the salt is worked out from: vegetables, seasonings and added water, g.</summary>
    public double SaltedGrams => SolidGrams + WaterGrams;

    /// <summary>All of it without the salt, g.</summary>
    public double TotalGrams => SaltedGrams + VinegarGrams + StarterGrams;

    /// <summary>The salt, by weight, and as per cent of vegetables and added water together. A brine needs water.</summary>
    public SaltToWeigh Salt => SaltToWeigh.Of(SaltPercent, SaltOf, SolidGrams / 1000, WaterGrams / 1000);

    /// <summary>What is to be made known: as the household wrote it, and what the names of its parts tell.</summary>
    public IReadOnlyList<string> ToBeMadeKnown =>
        [.. Allergens.Concat(Vegetables.Concat(Seasonings).SelectMany(part =>
            Labels.Allergens.In(part.Name))).Distinct(StringComparer.OrdinalIgnoreCase)];

    /// <summary>The same for so many times as much.</summary>
    public Mixture Times(double factor) => this with
    {
        Vegetables = [.. Vegetables.Select(part => part with { Grams = factor * part.Grams })],
        Seasonings = [.. Seasonings.Select(part => part with { Grams = factor * part.Grams })],
        WaterGrams = factor * WaterGrams, VinegarGrams = factor * VinegarGrams, StarterGrams = factor * StarterGrams,
    };
}

/// <summary>A part of a mixture.</summary>
/// <param name="Name">Its name, in the catalogue or not.</param>
/// <param name="Grams">How much of it, g.</param>
/// <param name="Note">How it is prepared; empty where nothing is said.</param>
public sealed record MixturePart(string Name, double Grams, string Note = "");

/// <summary>The record of recipes.</summary>
public interface IRecipeBook
{
    /// <summary>All recipes, by name.</summary>
    Task<IReadOnlyList<HouseholdRecipe>> AllAsync(CancellationToken cancellationToken);

    /// <summary>Adds a recipe, or writes one with its id anew. A name that another has is an error that names it.</summary>
    Task KeepAsync(HouseholdRecipe recipe, CancellationToken cancellationToken);

    /// <summary>Removes a recipe; false where there is none.</summary>
    Task<bool> RemoveAsync(Guid id, CancellationToken cancellationToken);
}
