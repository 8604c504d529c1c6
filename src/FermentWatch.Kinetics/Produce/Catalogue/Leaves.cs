namespace FermentWatch.Kinetics.Produce.Catalogue;

/// <summary>Open leaves and stalks; what the figures are and where they come from: <see cref="Vegetable"/>.</summary>
internal static class Leaves
{
    public static IReadOnlyList<Vegetable> Entries { get; } =
    [
        new()
        {
            ListedAs = 3, Name = "napa", Aliases = ["napa cabbage", "chinese cabbage"],
            Composition = new()
            {
                Tables = ["USDA SR 11119"],
                WaterGrams = 94.39, ProteinGrams = 1.20, SugarsGrams = 1.41,
                CalciumMilligrams = 77, MagnesiumMilligrams = 13, PhosphorusMilligrams = 29, PotassiumMilligrams = 238, SodiumMilligrams = 9,
            },
            RawPh = 5.93, // within FDA's 5.6 to 6.1
            MalicMillimolesPerKilogram = 21, CitricMillimolesPerKilogram = 6, // from memory
            StrongIonShare = 0.7702, // fitted
            Flora = FloraKind.Leaf, UsualCut = Cut.SaltedLeaves,
            EndPercentLactic = 1.0, // Kim et al. 2020, Foods 9(8):1075: 0.90 to 1.00 %
            Recipe = PublishedRecipe.Kimchi,
            KeptColdDays = 14, // kimchi 1, 2 or 4 weeks: Colorado State, older; Colorado State 2025; trade practice; the middle is taken
            IsRichInNitrate = true, // EFSA 2008
            FermentsInTheCold = true, // ripe after a week at 10 C: reviews of kimchi
        },
        new()
        {
            ListedAs = 10, Name = "pak choi", Aliases = ["bok choy", "pak choy"],
            Composition = new()
            {
                Tables = ["USDA SR 11116"],
                WaterGrams = 95.32, ProteinGrams = 1.50, SugarsGrams = 1.18,
                CalciumMilligrams = 105, MagnesiumMilligrams = 19, PhosphorusMilligrams = 37, PotassiumMilligrams = 252, SodiumMilligrams = 65,
            },
            RawPh = 5.93, // no row: that of napa
            MalicMillimolesPerKilogram = 21, CitricMillimolesPerKilogram = 6, // from memory
            StrongIonShare = 0.75, // as their kin, no row
            Flora = FloraKind.Leaf, UsualCut = Cut.SaltedLeaves,
            IsRichInNitrate = true, // EFSA 2008
        },
        new()
        {
            ListedAs = 17, Name = "celery", Allergen = "celery",
            Composition = new()
            {
                Tables = ["USDA SR 11143", "IFCT D037"],
                WaterGrams = 94.2, ProteinGrams = 0.83, SugarsGrams = 1.34,
                CalciumMilligrams = 39, MagnesiumMilligrams = 14, PhosphorusMilligrams = 34, PotassiumMilligrams = 279, SodiumMilligrams = 45,
            },
            RawPh = 5.85, // from memory
            MalicMillimolesPerKilogram = 12, CitricMillimolesPerKilogram = 5, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Leaf, UsualCut = Cut.Sliced, IsFromMemory = true,
            IsRichInNitrate = true, // EFSA 2008
        },
        // Fennel bulb.
        new()
        {
            ListedAs = 23, Name = "fennel",
            Composition = new()
            {
                Tables = ["USDA SR 11957"],
                WaterGrams = 90.2, ProteinGrams = 1.24, SugarsGrams = 3.93,
                CalciumMilligrams = 49, MagnesiumMilligrams = 17, PhosphorusMilligrams = 50, PotassiumMilligrams = 414, SodiumMilligrams = 52,
            },
            RawPh = 5.8, // from memory
            MalicMillimolesPerKilogram = 12, CitricMillimolesPerKilogram = 4, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Leaf, UsualCut = Cut.Shredded, IsFromMemory = true,
            IsRichInNitrate = true, // EFSA 2008
        },
    ];
}
