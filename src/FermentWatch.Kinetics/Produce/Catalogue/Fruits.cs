namespace FermentWatch.Kinetics.Produce.Catalogue;

/// <summary>Fruits and pods; what the figures are and where they come from: <see cref="Vegetable"/>.</summary>
internal static class Fruits
{
    public static IReadOnlyList<Vegetable> Entries { get; } =
    [
        // Cucumber with its peel.
        new()
        {
            ListedAs = 5, Name = "cucumber", Aliases = ["cucumbers", "gherkin", "gherkins"],
            Composition = new()
            {
                Tables = ["USDA SR 11205"],
                WaterGrams = 95.23, ProteinGrams = 0.65, SugarsGrams = 1.67,
                CalciumMilligrams = 16, MagnesiumMilligrams = 13, PhosphorusMilligrams = 24, PotassiumMilligrams = 147, SodiumMilligrams = 2,
            },
            RawPh = 5.45, // middle of FDA's 5.1 to 5.8
            MalicMillimolesPerKilogram = 13, CitricMillimolesPerKilogram = 1, // from memory
            StrongIonShare = 0.9226, // fitted
            Flora = FloraKind.Fruit, UsualCut = Cut.Whole,
            EndPercentLactic = 0.90, // in brine 0.85 to 0.90 %: abstract, authors not recorded
        },
        // Green beans, raw pods.
        new()
        {
            ListedAs = 12, Name = "green beans", Aliases = ["string beans", "french beans"],
            Composition = new()
            {
                Tables = ["USDA SR 11052", "IFCT D050"],
                WaterGrams = 90.2, ProteinGrams = 1.98, SugarsGrams = 3.26,
                CalciumMilligrams = 44, MagnesiumMilligrams = 30, PhosphorusMilligrams = 42, PotassiumMilligrams = 264, SodiumMilligrams = 8,
            },
            RawPh = 5.65, // from memory
            MalicMillimolesPerKilogram = 12, CitricMillimolesPerKilogram = 3, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Fruit, UsualCut = Cut.Whole, IsFromMemory = true,
        },
        new()
        {
            ListedAs = 13, Name = "red pepper", Aliases = ["red peppers", "sweet pepper", "bell pepper"],
            Composition = new()
            {
                Tables = ["USDA SR 11821", "IFCT D034"],
                WaterGrams = 92.6, ProteinGrams = 1.23, SugarsGrams = 4.20,
                CalciumMilligrams = 11, MagnesiumMilligrams = 16, PhosphorusMilligrams = 28, PotassiumMilligrams = 218, SodiumMilligrams = 3,
            },
            RawPh = 5.1, // from memory
            MalicMillimolesPerKilogram = 5, CitricMillimolesPerKilogram = 8, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Fruit, UsualCut = Cut.Sliced, IsFromMemory = true,
        },
        new()
        {
            ListedAs = 14, Name = "green pepper", Aliases = ["green peppers"],
            Composition = new()
            {
                Tables = ["USDA SR 11333", "IFCT D033"],
                WaterGrams = 93.9, ProteinGrams = 0.99, SugarsGrams = 2.40,
                CalciumMilligrams = 12, MagnesiumMilligrams = 11, PhosphorusMilligrams = 22, PotassiumMilligrams = 165, SodiumMilligrams = 2,
            },
            RawPh = 5.5, // from memory
            MalicMillimolesPerKilogram = 6, CitricMillimolesPerKilogram = 6, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Fruit, UsualCut = Cut.Sliced, IsFromMemory = true,
        },
        new()
        {
            ListedAs = 19, Name = "red chilli", Aliases = ["chilli", "chillies", "red chillies", "chili"],
            Composition = new()
            {
                Tables = ["USDA SR 11819"],
                WaterGrams = 88.0, ProteinGrams = 1.87, SugarsGrams = 5.30,
                CalciumMilligrams = 14, MagnesiumMilligrams = 23, PhosphorusMilligrams = 43, PotassiumMilligrams = 322, SodiumMilligrams = 9,
            },
            RawPh = 5.1, // from memory
            MalicMillimolesPerKilogram = 8, CitricMillimolesPerKilogram = 10, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Fruit, UsualCut = Cut.Shredded, IsFromMemory = true,
            MashMayStayAboveTheLine = true, // 4.83 after 15 days: abstract, authors not shown
        },
        new()
        {
            ListedAs = 20, Name = "jalapeno", Aliases = ["jalapenos", "green chilli", "green chillies"],
            Composition = new()
            {
                Tables = ["USDA SR 11979", "IFCT G008"],
                WaterGrams = 88.5, ProteinGrams = 1.64, SugarsGrams = 4.12,
                CalciumMilligrams = 15, MagnesiumMilligrams = 22, PhosphorusMilligrams = 39, PotassiumMilligrams = 295, SodiumMilligrams = 3,
            },
            RawPh = 5.4, // from memory
            MalicMillimolesPerKilogram = 6, CitricMillimolesPerKilogram = 8, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Fruit, UsualCut = Cut.Pieces, IsFromMemory = true,
            MashMayStayAboveTheLine = true, // 4.83 after 15 days: abstract, authors not shown
        },
        new()
        {
            ListedAs = 22, Name = "green tomato", Aliases = ["green tomatoes"],
            Composition = new()
            {
                Tables = ["USDA SR 11527", "IFCT D074"],
                WaterGrams = 93.1, ProteinGrams = 1.16, SugarsGrams = 4.00,
                CalciumMilligrams = 11, MagnesiumMilligrams = 12, PhosphorusMilligrams = 25, PotassiumMilligrams = 215, SodiumMilligrams = 13,
            },
            RawPh = 4.35, // from memory
            MalicMillimolesPerKilogram = 8, CitricMillimolesPerKilogram = 20, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Fruit, UsualCut = Cut.Pieces, IsFromMemory = true,
        },
        new()
        {
            ListedAs = 25, Name = "zucchini", Aliases = ["courgette", "courgettes"],
            Composition = new()
            {
                Tables = ["USDA SR 11477", "IFCT D077"],
                WaterGrams = 93.8, ProteinGrams = 1.16, SugarsGrams = 2.50,
                CalciumMilligrams = 17, MagnesiumMilligrams = 17, PhosphorusMilligrams = 30, PotassiumMilligrams = 220, SodiumMilligrams = 4,
            },
            RawPh = 5.9, // from memory
            MalicMillimolesPerKilogram = 15, CitricMillimolesPerKilogram = 3, // from memory
            StrongIonShare = 0.75, // the middle of the others
            Flora = FloraKind.Fruit, UsualCut = Cut.Sliced, IsFromMemory = true,
        },
    ];
}
