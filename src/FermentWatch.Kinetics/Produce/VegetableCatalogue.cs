namespace FermentWatch.Kinetics.Produce;

/// <content>
/// The catalogue. Composition: USDA National Nutrient Database SR, the NDB numbers beside each; minerals of the second half are means with
/// the Indian Food Composition Tables (Longvah T. et al., National Institute of Nutrition, Hyderabad, 2017; IFCT), whose sugars run
/// far below SR's: that difference is in the spread. Raw pH: middle of the range in the FDA lists of approximate pH of foods (2003
/// and earlier), of the second half from memory. Malic and citric acid are from memory of general tables and carry a wide prior. No
/// published course was fitted to the second half.
/// </content>
public sealed partial class Vegetable
{
    /// <summary>Spread of a vegetable without a course, over that of one with.</summary>
    private const double Unmeasured = 1.8;

    /// <summary>White or green cabbage (SR 11109).</summary>
    public static Vegetable Cabbage { get; } = new("cabbage", ["white cabbage", "green cabbage", "kraut"],
        new(92.18, 1.28, 3.20, 40, 12, 26, 170, 18), 6.1, 20, 5.5, FloraKind.Head);

    /// <summary>Red cabbage (SR 11112).</summary>
    public static Vegetable RedCabbage { get; } = new("red cabbage", ["purple cabbage"],
        new(90.39, 1.43, 3.83, 45, 16, 30, 243, 27), 5.7, 20, 5.5, FloraKind.Head);

    /// <summary>Napa cabbage (SR 11119).</summary>
    public static Vegetable Napa { get; } = new("napa", ["napa cabbage", "chinese cabbage"],
        new(94.39, 1.20, 1.41, 77, 13, 29, 238, 9), 5.93, 21, 6, FloraKind.Leaf);

    /// <summary>Carrot (SR 11124).</summary>
    public static Vegetable Carrot { get; } = new("carrot", ["carrots"],
        new(88.29, 0.93, 4.74, 33, 12, 35, 320, 69), 6.15, 18, 2, FloraKind.Root);

    /// <summary>Cucumber with its peel (SR 11205).</summary>
    public static Vegetable Cucumber { get; } = new("cucumber", ["cucumbers", "gherkin", "gherkins"],
        new(95.23, 0.65, 1.67, 16, 13, 24, 147, 2), 5.45, 13, 1, FloraKind.Fruit);

    /// <summary>Daikon, the long white radish (SR 11430).</summary>
    public static Vegetable Daikon { get; } = new("daikon", ["white radish", "mooli"],
        new(94.62, 0.60, 2.50, 27, 16, 23, 227, 21), 5.75, 8, 2, FloraKind.Root);

    /// <summary>Beet (SR 11080).</summary>
    public static Vegetable Beet { get; } = new("beet", ["beets", "beetroot"],
        new(87.58, 1.61, 6.76, 16, 23, 40, 325, 78), 5.95, 3, 10, FloraKind.Root);

    /// <summary>Radish (SR 11429).</summary>
    public static Vegetable Radish { get; } = new("radish", ["radishes"],
        new(95.27, 0.68, 1.86, 25, 10, 20, 233, 39), 6.0, 8, 2, FloraKind.Root);

    /// <summary>Turnip (SR 11564).</summary>
    public static Vegetable Turnip { get; } = new("turnip", ["turnips"],
        new(91.87, 0.90, 3.80, 30, 11, 27, 191, 67), 5.6, 15, 3, FloraKind.Root);

    /// <summary>Pak choi (SR 11116). No raw pH in the tables: that of napa is used.</summary>
    public static Vegetable PakChoi { get; } = new("pak choi", ["bok choy", "pak choy"],
        new(95.32, 1.50, 1.18, 105, 19, 37, 252, 65), 5.93, 21, 6, FloraKind.Leaf);

    /// <summary>Cauliflower (SR 11135, IFCT D036).</summary>
    public static Vegetable Cauliflower { get; } = new("cauliflower", [],
        new(91.4, 2.04, 1.91, 24, 19, 46, 314, 30), 5.6, 15, 5, FloraKind.Head, Unmeasured);

    /// <summary>Green beans, raw pods (SR 11052, IFCT D050).</summary>
    public static Vegetable GreenBeans { get; } = new("green beans", ["string beans", "french beans"],
        new(90.2, 1.98, 3.26, 44, 30, 42, 264, 8), 5.65, 12, 3, FloraKind.Fruit, Unmeasured);

    /// <summary>Red sweet pepper (SR 11821, IFCT D034).</summary>
    public static Vegetable RedPepper { get; } = new("red pepper", ["red peppers", "sweet pepper", "bell pepper"],
        new(92.6, 1.23, 4.20, 11, 16, 28, 218, 3), 5.1, 5, 8, FloraKind.Fruit, Unmeasured);

    /// <summary>Green sweet pepper (SR 11333, IFCT D033).</summary>
    public static Vegetable GreenPepper { get; } = new("green pepper", ["green peppers"],
        new(93.9, 0.99, 2.40, 12, 11, 22, 165, 2), 5.5, 6, 6, FloraKind.Fruit, Unmeasured);

    /// <summary>Onion (SR 11282, IFCT G017).</summary>
    public static Vegetable Onion { get; } = new("onion", ["onions"],
        new(87.4, 1.30, 4.24, 22, 14, 31, 159, 5), 5.55, 12, 2, FloraKind.Head, Unmeasured);

    /// <summary>Garlic (SR 11215, IFCT G011): its fructans are no sugar of the starters.</summary>
    public static Vegetable Garlic { get; } = new("garlic", [],
        new(61.5, 6.64, 1.00, 100, 26, 136, 416, 13), 5.8, 5, 4, FloraKind.Head, Unmeasured);

    /// <summary>Celery (SR 11143, IFCT D037).</summary>
    public static Vegetable Celery { get; } = new("celery", [],
        new(94.2, 0.83, 1.34, 39, 14, 34, 279, 45), 5.85, 12, 5, FloraKind.Leaf, Unmeasured);

    /// <summary>Kohlrabi (SR 11241, IFCT D053).</summary>
    public static Vegetable Kohlrabi { get; } = new("kohlrabi", [],
        new(92.1, 1.64, 2.60, 30, 19, 43, 339, 24), 5.75, 12, 3, FloraKind.Root, Unmeasured);

    /// <summary>Red chilli (SR 11819).</summary>
    public static Vegetable RedChilli { get; } = new("red chilli", ["chilli", "chillies", "red chillies", "chili"],
        new(88.0, 1.87, 5.30, 14, 23, 43, 322, 9), 5.1, 8, 10, FloraKind.Fruit, Unmeasured);

    /// <summary>Jalapeno (SR 11979, IFCT G008).</summary>
    public static Vegetable Jalapeno { get; } = new("jalapeno", ["jalapenos", "green chilli", "green chillies"],
        new(88.5, 1.64, 4.12, 15, 22, 39, 295, 3), 5.4, 6, 8, FloraKind.Fruit, Unmeasured);

    /// <summary>Brussels sprouts (SR 11098, IFCT C012).</summary>
    public static Vegetable BrusselsSprouts { get; } = new("brussels sprouts", ["sprouts"],
        new(85.2, 3.82, 2.20, 48, 28, 84, 514, 22), 6.15, 18, 8, FloraKind.Head, Unmeasured);

    /// <summary>Green tomato (SR 11527, IFCT D074).</summary>
    public static Vegetable GreenTomato { get; } = new("green tomato", ["green tomatoes"],
        new(93.1, 1.16, 4.00, 11, 12, 25, 215, 13), 4.35, 8, 20, FloraKind.Fruit, Unmeasured);

    /// <summary>Fennel bulb (SR 11957).</summary>
    public static Vegetable Fennel { get; } = new("fennel", [],
        new(90.2, 1.24, 3.93, 49, 17, 50, 414, 52), 5.8, 12, 4, FloraKind.Leaf, Unmeasured);

    /// <summary>Rutabaga (SR 11435).</summary>
    public static Vegetable Rutabaga { get; } = new("rutabaga", ["swede", "swedes"],
        new(89.4, 1.08, 4.46, 43, 20, 53, 305, 12), 5.9, 15, 3, FloraKind.Root, Unmeasured);

    /// <summary>Zucchini (SR 11477, IFCT D077).</summary>
    public static Vegetable Zucchini { get; } = new("zucchini", ["courgette", "courgettes"],
        new(93.8, 1.16, 2.50, 17, 17, 30, 220, 4), 5.9, 15, 3, FloraKind.Fruit, Unmeasured);

    /// <summary>Every vegetable of the catalogue.</summary>
    public static IReadOnlyList<Vegetable> All { get; } =
    [
        Cabbage, RedCabbage, Napa, Carrot, Cucumber, Daikon, Beet, Radish, Turnip, PakChoi,
        Cauliflower, GreenBeans, RedPepper, GreenPepper, Onion, Garlic, Celery, Kohlrabi, RedChilli, Jalapeno,
        BrusselsSprouts, GreenTomato, Fennel, Rutabaga, Zucchini,
    ];
}
