namespace FermentWatch.Kinetics.Produce;

/// <summary>What 100 g of a raw vegetable hold, as far as the ferment depends on it.</summary>
/// <param name="WaterGrams">Water, g per 100 g.</param>
/// <param name="ProteinGrams">Protein, g per 100 g.</param>
/// <param name="SugarsGrams">Fermentable sugars as hexose, g per 100 g.</param>
/// <param name="CalciumMilligrams">Calcium, mg per 100 g.</param>
/// <param name="MagnesiumMilligrams">Magnesium, mg per 100 g.</param>
/// <param name="PhosphorusMilligrams">Phosphorus, mg per 100 g.</param>
/// <param name="PotassiumMilligrams">Potassium, mg per 100 g.</param>
/// <param name="SodiumMilligrams">Sodium, mg per 100 g.</param>
public sealed record Composition(
    double WaterGrams,
    double ProteinGrams,
    double SugarsGrams,
    double CalciumMilligrams,
    double MagnesiumMilligrams,
    double PhosphorusMilligrams,
    double PotassiumMilligrams,
    double SodiumMilligrams);
