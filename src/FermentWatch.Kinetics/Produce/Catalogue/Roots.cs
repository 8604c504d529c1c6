namespace FermentWatch.Kinetics.Produce.Catalogue;

/// <summary>Roots and what grows like them; what the figures are and where they come from: <see cref="Vegetable"/>.</summary>
internal static class Roots
{
    public static IReadOnlyList<Vegetable> Entries { get; } =
    [
        new()
        {
            ListedAs = 4, Name = "carrot", Aliases = ["carrots"],
            Composition = new()
            {
                Tables = ["USDA SR 11124"],
                WaterGrams = 88.29, ProteinGrams = 0.93, SugarsGrams = 4.74,
                CalciumMilligrams = 33, MagnesiumMilligrams = 12, PhosphorusMilligrams = 35, PotassiumMilligrams = 320, SodiumMilligrams = 69,
            },
            RawPh = 6.15, // middle of FDA's 5.9 to 6.4
            MalicMillimolesPerKilogram = 18, CitricMillimolesPerKilogram = 2, // from memory
            StrongIonShare = 0.8399, // fitted
            Flora = FloraKind.Root, UsualCut = Cut.Sliced,
            EndPercentLactic = 1.51, // Vatansever et al., J. Food Research 6(5): 1.39 +- 0.12 %
        },
        // Daikon, the long white radish.
        new()
        {
            ListedAs = 6, Name = "daikon", Aliases = ["white radish", "mooli"],
            Composition = new()
            {
                Tables = ["USDA SR 11430"],
                WaterGrams = 94.62, ProteinGrams = 0.60, SugarsGrams = 2.50,
                CalciumMilligrams = 27, MagnesiumMilligrams = 16, PhosphorusMilligrams = 23, PotassiumMilligrams = 227, SodiumMilligrams = 21,
            },
            RawPh = 5.75, // middle of FDA's 5.5 to 6.0
            MalicMillimolesPerKilogram = 8, CitricMillimolesPerKilogram = 2, // from memory
            StrongIonShare = 0.6631, // fitted, one share for radish and daikon
            Flora = FloraKind.Root, UsualCut = Cut.Pieces,
            IsRichInNitrate = true, // EFSA 2008
            FermentsInTheCold = true, // as radish
        },
        new()
        {
            ListedAs = 7, Name = "beet", Aliases = ["beets", "beetroot"],
            Composition = new()
            {
                Tables = ["USDA SR 11080"],
                WaterGrams = 87.58, ProteinGrams = 1.61, SugarsGrams = 6.76,
                CalciumMilligrams = 16, MagnesiumMilligrams = 23, PhosphorusMilligrams = 40, PotassiumMilligrams = 325, SodiumMilligrams = 78,
            },
            RawPh = 5.95, // middle of FDA's 5.3 to 6.6
            MalicMillimolesPerKilogram = 3, CitricMillimolesPerKilogram = 10, // from memory
            StrongIonShare = 0.7, // as their kin, no row
            Flora = FloraKind.Root, UsualCut = Cut.Sliced,
            IsRichInNitrate = true, // EFSA 2008
        },
        new()
        {
            ListedAs = 8, Name = "radish", Aliases = ["radishes"],
            Composition = new()
            {
                Tables = ["USDA SR 11429"],
                WaterGrams = 95.27, ProteinGrams = 0.68, SugarsGrams = 1.86,
                CalciumMilligrams = 25, MagnesiumMilligrams = 10, PhosphorusMilligrams = 20, PotassiumMilligrams = 233, SodiumMilligrams = 39,
            },
            RawPh = 6.0, // middle of FDA's 5.5 to 6.5
            MalicMillimolesPerKilogram = 8, CitricMillimolesPerKilogram = 2, // from memory
            StrongIonShare = 0.6631, // fitted, one share for radish and daikon
            Flora = FloraKind.Root, UsualCut = Cut.Pieces,
            EndPercentLactic = 1.9, // Joshi & Sharma 2009: 1.7 to 1.9 %
            IsRichInNitrate = true, // EFSA 2008
            FermentsInTheCold = true, // pH 4.0 after 12 days at 10 C: Kim S.D. et al. 1999
        },
        new()
        {
            ListedAs = 9, Name = "turnip", Aliases = ["turnips"],
            Composition = new()
            {
                Tables = ["USDA SR 11564"],
                WaterGrams = 91.87, ProteinGrams = 0.90, SugarsGrams = 3.80,
                CalciumMilligrams = 30, MagnesiumMilligrams = 11, PhosphorusMilligrams = 27, PotassiumMilligrams = 191, SodiumMilligrams = 67,
            },
            RawPh = 5.6, // middle of FDA's 5.3 to 5.9
            MalicMillimolesPerKilogram = 15, CitricMillimolesPerKilogram = 3, // from memory
            StrongIonShare = 0.7, // as their kin, no row
            Flora = FloraKind.Root, UsualCut = Cut.Pieces,
            IsRichInNitrate = true, // EFSA 2008
        },
        new()
        {
            ListedAs = 18, Name = "kohlrabi",
            Composition = new()
            {
                Tables = ["USDA SR 11241", "IFCT D053"],
                WaterGrams = 92.1, ProteinGrams = 1.64, SugarsGrams = 2.60,
                CalciumMilligrams = 30, MagnesiumMilligrams = 19, PhosphorusMilligrams = 43, PotassiumMilligrams = 339, SodiumMilligrams = 24,
            },
            RawPh = 5.75, // from memory
            MalicMillimolesPerKilogram = 12, CitricMillimolesPerKilogram = 3, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Root, UsualCut = Cut.Sliced, IsFromMemory = true,
            IsRichInNitrate = true, // EFSA 2008
        },
        new()
        {
            ListedAs = 24, Name = "rutabaga", Aliases = ["swede", "swedes"],
            Composition = new()
            {
                Tables = ["USDA SR 11435"],
                WaterGrams = 89.4, ProteinGrams = 1.08, SugarsGrams = 4.46,
                CalciumMilligrams = 43, MagnesiumMilligrams = 20, PhosphorusMilligrams = 53, PotassiumMilligrams = 305, SodiumMilligrams = 12,
            },
            RawPh = 5.9, // from memory
            MalicMillimolesPerKilogram = 15, CitricMillimolesPerKilogram = 3, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Root, UsualCut = Cut.Pieces, IsFromMemory = true,
            IsRichInNitrate = true, // EFSA 2008
        },
    ];
}
