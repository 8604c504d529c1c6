namespace FermentWatch.Kinetics.Produce;

/// <summary>
/// What 100 g of a raw vegetable hold, as far as the ferment depends on it. Where two tables are named the figures are their means, but for
/// sugars, which are SR's: IFCT's run far below them, and that difference is in the spread.
/// </summary>
public sealed record Composition
{
    /// <summary>
    /// The rows it is from: <c>USDA SR</c> (USDA National Nutrient Database, NDB number), <c>IFCT</c> (Indian Food Composition Tables, Longvah
    /// T. et al., National Institute of Nutrition, Hyderabad, 2017, food code).
    /// </summary>
    public required IReadOnlyList<string> Tables { get; init; }

    /// <summary>Water, g per 100 g.</summary>
    public required double WaterGrams { get; init; }

    /// <summary>Protein, g per 100 g.</summary>
    public required double ProteinGrams { get; init; }

    /// <summary>Fermentable sugars as hexose, g per 100 g.</summary>
    public required double SugarsGrams { get; init; }

    /// <summary>Calcium, mg per 100 g.</summary>
    public required double CalciumMilligrams { get; init; }

    /// <summary>Magnesium, mg per 100 g.</summary>
    public required double MagnesiumMilligrams { get; init; }

    /// <summary>Phosphorus, mg per 100 g.</summary>
    public required double PhosphorusMilligrams { get; init; }

    /// <summary>Potassium, mg per 100 g.</summary>
    public required double PotassiumMilligrams { get; init; }

    /// <summary>Sodium, mg per 100 g.</summary>
    public required double SodiumMilligrams { get; init; }
}

/// <summary>One vegetable of a jar and how much of it went in.</summary>
/// <param name="Vegetable">A vegetable of the catalogue.</param>
/// <param name="MassKilograms">Prepared mass in kilograms, above zero.</param>
public sealed record ProduceShare(Vegetable Vegetable, double MassKilograms);
