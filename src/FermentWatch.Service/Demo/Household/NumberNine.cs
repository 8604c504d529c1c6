using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using NodaTime;
using static FermentWatch.Service.Demo.Household.InventedActs;

namespace FermentWatch.Service.Demo.Household;

/// <summary>
/// The Number Nine kitchen: three neighbouring families who share a garden, a kitchen and a cellar. All of it is invented:
/// people, rooms, jars, and what happened to them.
/// </summary>
internal static class NumberNine
{
    public const string Name = "The Number Nine kitchen";

    /// <summary>Who signs in first.</summary>
    public const string Owner = "Rowan";

    private const string Neighbour = "Ash", Child = "Wren", Third = "Juniper";
    private const string Counter = "kitchen counter", Pantry = "pantry shelf", Cellar = "cellar", ColdStore = "cold store", Shed = "garden shed";

    public static readonly IReadOnlyList<(string Name, MemberRole Role)> People =
        [(Owner, MemberRole.Adult), (Neighbour, MemberRole.Adult), (Third, MemberRole.Adult), (Child, MemberRole.Child)];

    /// <summary>Rooms in the order in which the round passes them; the pantry has no sensor.</summary>
    public static readonly IReadOnlyList<InventedRoom> Rooms =
    [
        new(Counter, TypicalTemperature.Usual, 20.2, 1.2, 0.25, 3.5, 1.1),
        new(Pantry, TypicalTemperature.Cool, 17.5, 0.6, 0.2, 3.0, 0.2),
        new(Cellar, TypicalTemperature.Cellar, 12.6, 0.25, 0.12, 1.2, 0),
        new(ColdStore, TypicalTemperature.ColdStore, 3.6, 0.15, 0, 0, 0),
        new(Shed, TypicalTemperature.Cool, 13.5, 3.5, 0.9, 5.0, 0),
    ];

    public static readonly IReadOnlyList<InventedSensor> Sensors =
    [
        new("kitchen", Counter, null, TimeSpan.FromSeconds(10)),
        new("cellar", Cellar, null, TimeSpan.FromSeconds(30)),
        new("cold store", ColdStore, null, TimeSpan.FromSeconds(60)),
        new("shed", Shed, null, TimeSpan.FromSeconds(45)),
        new("crock probe", Counter, "autumn crock", TimeSpan.FromSeconds(20)),
    ];

    /// <summary>The sensor with whose credential the demo invites to try.</summary>
    public const string SensorToTry = "kitchen";

    /// <summary>The sensor that now and then sends what cannot be used.</summary>
    public const string TroubledSensor = "shed";

    /// <summary>What it sends then, by quantity.</summary>
    public static readonly IReadOnlyList<(string Quantity, string Payload)> UnusablePayloads =
        [("temperature", "warm"), ("temperature", "nan"), ("pressure", "1013"), ("temperature", "85.0")];

    /// <summary>The room that the morning's round does not come to.</summary>
    public const string ForgottenRoom = Shed;

    /// <summary>When the household looks around.</summary>
    public static readonly LocalTime RoundAt = new(7, 20);

    /// <summary>Mornings on which somebody looked around: how many days ago, and who. Full days are left out, as in any household.</summary>
    public static readonly IReadOnlyList<(int DaysAgo, string By)> Rounds =
        [.. Enumerable.Range(1, 34).Where(daysAgo => daysAgo % 9 != 4).Select(daysAgo => (daysAgo, new[] { Owner, Neighbour, Child,
            Third }[daysAgo % 4]))];

    /// <summary>Jars of several ages, one of each trouble among them.</summary>
    public static readonly IReadOnlyList<InventedLot> Lots =
    [
        new(382, Cabbage with { Name = "last year's kraut", Place = Counter },
            Strip(5, Neighbour), Meter(7, Owner, 0.04), Meter(9, Owner), Looked(10, Child).WithPhoto(), Tasted(12, Owner, TasteVerdict.Nearly),
            Tasted(16, Owner, TasteVerdict.Right), IntoTheCold(16, Owner, ColdStore), Finished(140, Third)),
        new(376, Cabbage with { What = "red cabbage", Name = "last year's red", Also = "caraway 5g", Salt = "2.5%", Place = Pantry },
            Meter(10, Owner), Saw(12, Child, SightingKind.Film), Settled(12.1, Owner, HandlingKind.Skimmed), Meter(13, Owner, 0.03),
            Tasted(21, Third, TasteVerdict.Right), IntoTheCold(21, Third, ColdStore), Finished(170, Neighbour, Destination.GivenAway, "the choir")),
        new(370, Carrots with { Name = "last year's carrots", Place = Pantry },
            Strip(6, Neighbour), Tasted(9, Neighbour, TasteVerdict.Nearly), Tasted(11, Neighbour, TasteVerdict.Right),
            IntoTheCold(11, Neighbour, ColdStore), Ate(40, Third, "1/4"), Finished(90, Third, Destination.Frozen)),
        new(35, Cabbage with { Name = "harvest kraut", Place = Counter },
            Strip(6, Neighbour), Meter(8, Owner), Meter(10, Owner), Tasted(12, Third, TasteVerdict.Nearly), Tasted(15, Owner, TasteVerdict.Right),
            IntoTheCold(15, Owner, ColdStore), Ate(19, Child, "1/4"), Ate(24, Third, "200 g"), Ate(28, Neighbour, "1/4"), Finished(33, Neighbour)),
        new(34, Cabbage with { Name = "first kraut", HowMany = "2", Place = Pantry },
            Strip(6, Neighbour), Meter(12, Owner, 0.03), Meter(16, Owner, -0.02), Tasted(20, Third, TasteVerdict.Nearly),
            Tasted(26, Owner, TasteVerdict.Right), IntoTheCold(26, Owner, ColdStore), Ate(30, Child, "1/8"), Ate(32, Third, "1/3")),
        new(27, Cabbage with { What = "red cabbage", Name = "red with caraway", Also = "carrot 120g, caraway 5g", Salt = "2.5%", Place = Cellar },
            Looked(2, Child), Meter(9, Neighbour, 0.02), Saw(15, Child, SightingKind.Film), Meter(16, Neighbour, 0.08), Looked(18, Neighbour, true)
                .WithPhoto()),
        new(23, Cabbage with { Name = "kraut on the shelf", Place = Pantry },
            Meter(14, Owner), Meter(16, Owner), Meter(18, Third, 0.5), Meter(20, Owner, 0.7), Saw(20, Owner, SightingKind.OffSmell)),
        new(20, Cucumbers with { Name = "dill cucumbers, early", Place = Counter },
            Saw(3, Third, SightingKind.Gas), Saw(12, Third, SightingKind.Slime), ThrownOut(12, Third, "slimy after the warm days")),
        new(17, Cabbage with { Name = "forgotten jar", Place = Shed, Salt = "by taste", Lid = "Cloth" },
            Looked(3, Child), Saw(16, Child, SightingKind.FuzzOrUnsure)),
        new(14, Cabbage with { Name = "autumn crock", HowMuch = "4kg", Vessel = "6l", Salt = "2.25%", Place = Counter, Lid = "WaterSealed",
            Cover = "Weight", Target = "VerySour" },
            Looked(3, Child).WithPhoto(), Meter(4, Owner, 0.04), Looked(8, Neighbour, true).WithPhoto(), Meter(10, Owner, -0.03),
            Tasted(12, Owner, TasteVerdict.NotYet)),
        new(11, Carrots with { Name = "carrots with ginger", HowMany = "3", Place = Pantry },
            Looked(1, Child), Saw(4, Child, SightingKind.PiecesUp), Settled(4.1, Neighbour, HandlingKind.PressedUnder).WithPhoto(),
            Strip(6, Neighbour),
            Tasted(9, Neighbour, TasteVerdict.Nearly), Saw(10.6, Child, SightingKind.PiecesUp)),
        new(8, Daikon with { Name = "daikon sticks", Place = Cellar },
            Meter(4, Third), Looked(6, Third)),
        new(6, Cucumbers with { Name = "dill cucumbers", HowMany = "2", Place = Counter, Lid = "Tight" },
            Saw(2, Neighbour, SightingKind.Gas), Strip(4, Neighbour), Saw(5, Child, SightingKind.BrineLow)),
        new(4, Napa with { Name = "napa jar", Place = Counter },
            Meter(2, Third, 0.05), MovedTo(2.2, Third, Cellar), Saw(3, Child, SightingKind.Other, "the garlic has turned blue")),
        new(2, Cabbage with { What = "red cabbage", Name = "red, second lot", HowMany = "4", Place = Counter }, Looked(1, Owner).WithPhoto()),
        new(0.3, Cabbage with { Name = "the last heads", HowMuch = "2 heads", HowMany = "2", Salt = "by taste", Place = Pantry, Vessel = "2l" }),
    ];

    /// <summary>In which colours photos of a jar are drawn, as ARGB.</summary>
    public static IReadOnlyList<uint> ColoursOf(string produce) => produce switch
    {
        "red cabbage" => [0xFF9B3A6E, 0xFF7A2957, 0xFFC47BA4],
        "carrot" => [0xFFE07B2C, 0xFFF09A4A, 0xFFC8621C],
        "cucumber" => [0xFF6E8F3E, 0xFF8FAB5A, 0xFF55742E],
        _ => [0xFFDCDDA6, 0xFFC6CF86, 0xFFEFEBC8],
    };

    private static PutUpForm Cabbage => new()
    {
        What = "cabbage", HowMuch = "900g", Salt = "2.25%", Vessel = "1l", Cover = "Leaf", Lid = "Vented", Target = "Sour",
    };

    private static PutUpForm Carrots => new()
    {
        What = "carrot", HowMuch = "600g", Also = "ginger 15g", Salt = "2.5%", AddedWater = "250g", Vessel = "1l", Cover = "Weight", Lid = "Vented",
            Target = "ALittleSour",
    };

    private static PutUpForm Cucumbers => new()
    {
        What = "cucumber", HowMuch = "1kg", Also = "dill 20g, garlic 15g", Salt = "3.5%", AddedWater = "900g", Vessel = "2l", Cover = "Weight",
            Lid = "Vented", Target = "ALittleSour",
    };

    private static PutUpForm Daikon => new()
    {
        What = "daikon", HowMuch = "700g", Salt = "2.5%", AddedWater = "200g", Vessel = "1l", Cover = "Weight", Lid = "Vented",
            Target = "ALittleSour",
    };

    private static PutUpForm Napa => new()
    {
        What = "napa", HowMuch = "1.2kg", Also = "radish 100g, garlic 20g, chilli 10g", Salt = "2.5%", Vessel = "1.5l", Cover = "Leaf",
            Lid = "Vented", Target = "ALittleSour",
    };
}
