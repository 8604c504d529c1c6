namespace FermentWatch.Kinetics.Produce.Catalogue;

/// <summary>Tight heads, bulbs and curds; what the figures are and where they come from: <see cref="Vegetable"/>.</summary>
internal static class Heads
{
    /// <summary>USDA SR 11109: small, medium and large head; 20 % refuse.</summary>
    private static readonly HeadMass CabbageHead = new()
    {
        SmallKilograms = 0.714, MediumKilograms = 0.908, LargeKilograms = 1.248, PreparedShare = 0.8,
    };

    public static IReadOnlyList<Vegetable> Entries { get; } =
    [
        new()
        {
            ListedAs = 1, Name = "cabbage", Aliases = ["white cabbage", "green cabbage", "kraut"],
            Composition = new()
            {
                Tables = ["USDA SR 11109"],
                WaterGrams = 92.18, ProteinGrams = 1.28, SugarsGrams = 3.20,
                CalciumMilligrams = 40, MagnesiumMilligrams = 12, PhosphorusMilligrams = 26, PotassiumMilligrams = 170, SodiumMilligrams = 18,
            },
            RawPh = 6.1, // within FDA's 5.2 to 6.8
            MalicMillimolesPerKilogram = 20, CitricMillimolesPerKilogram = 5.5, // from memory
            StrongIonShare = 0.8824, // fitted
            Flora = FloraKind.Head, UsualCut = Cut.Shredded,
            EndPercentLactic = 2.3, // Pederson & Albury 1969, Bulletin 824: 1.7 to 2.3 %
            Recipe = PublishedRecipe.Kraut,
            Head = CabbageHead,
            IsRichInNitrate = true, // EFSA 2008
        },
        new()
        {
            ListedAs = 2, Name = "red cabbage", Aliases = ["purple cabbage"],
            Composition = new()
            {
                Tables = ["USDA SR 11112"],
                WaterGrams = 90.39, ProteinGrams = 1.43, SugarsGrams = 3.83,
                CalciumMilligrams = 45, MagnesiumMilligrams = 16, PhosphorusMilligrams = 30, PotassiumMilligrams = 243, SodiumMilligrams = 27,
            },
            RawPh = 5.7, // middle of FDA's 5.4 to 6.0
            MalicMillimolesPerKilogram = 20, CitricMillimolesPerKilogram = 5.5, // from memory
            StrongIonShare = 0.8353, // fitted
            Flora = FloraKind.Head, UsualCut = Cut.Shredded,
            EndPercentLactic = 1.63, // Vatansever et al., J. Food Research 6(5): 1.54 +- 0.09 %
            Recipe = PublishedRecipe.Kraut,
            Head = CabbageHead,
            IsRichInNitrate = true, // EFSA 2008
        },
        new()
        {
            ListedAs = 11, Name = "cauliflower",
            Composition = new()
            {
                Tables = ["USDA SR 11135", "IFCT D036"],
                WaterGrams = 91.4, ProteinGrams = 2.04, SugarsGrams = 1.91,
                CalciumMilligrams = 24, MagnesiumMilligrams = 19, PhosphorusMilligrams = 46, PotassiumMilligrams = 314, SodiumMilligrams = 30,
            },
            RawPh = 5.6, // from memory
            MalicMillimolesPerKilogram = 15, CitricMillimolesPerKilogram = 5, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Head, UsualCut = Cut.Pieces, IsFromMemory = true,
        },
        new()
        {
            ListedAs = 15, Name = "onion", Aliases = ["onions"],
            Composition = new()
            {
                Tables = ["USDA SR 11282", "IFCT G017"],
                WaterGrams = 87.4, ProteinGrams = 1.30, SugarsGrams = 4.24,
                CalciumMilligrams = 22, MagnesiumMilligrams = 14, PhosphorusMilligrams = 31, PotassiumMilligrams = 159, SodiumMilligrams = 5,
            },
            RawPh = 5.55, // from memory
            MalicMillimolesPerKilogram = 12, CitricMillimolesPerKilogram = 2, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Head, UsualCut = Cut.Sliced, IsFromMemory = true,
        },
        // Garlic: its fructans are no sugar of the starters.
        new()
        {
            ListedAs = 16, Name = "garlic",
            Composition = new()
            {
                Tables = ["USDA SR 11215", "IFCT G011"],
                WaterGrams = 61.5, ProteinGrams = 6.64, SugarsGrams = 1.00,
                CalciumMilligrams = 100, MagnesiumMilligrams = 26, PhosphorusMilligrams = 136, PotassiumMilligrams = 416, SodiumMilligrams = 13,
            },
            RawPh = 5.8, // from memory
            MalicMillimolesPerKilogram = 5, CitricMillimolesPerKilogram = 4, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Head, UsualCut = Cut.Whole, IsFromMemory = true,
        },
        new()
        {
            ListedAs = 21, Name = "brussels sprouts", Aliases = ["sprouts"],
            Composition = new()
            {
                Tables = ["USDA SR 11098", "IFCT C012"],
                WaterGrams = 85.2, ProteinGrams = 3.82, SugarsGrams = 2.20,
                CalciumMilligrams = 48, MagnesiumMilligrams = 28, PhosphorusMilligrams = 84, PotassiumMilligrams = 514, SodiumMilligrams = 22,
            },
            RawPh = 6.15, // from memory
            MalicMillimolesPerKilogram = 18, CitricMillimolesPerKilogram = 8, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Head, UsualCut = Cut.Pieces, IsFromMemory = true,
            IsRichInNitrate = true, // EFSA 2008
        },
    ];
}
