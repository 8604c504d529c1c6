using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Web.Pages.PuttingUp;

/// <summary>A choice with its drawing, in one ink: strokes on a field of 48 by 40, and what of it is filled.</summary>
public sealed record DrawnChoice(string Value, string Label, string Drawing, string Filled = "");

/// <summary>What is drawn on the put-up page: the vegetables that most jars hold, and how a jar is closed.</summary>
internal static class DrawnChoices
{
    // The jar of every cover: two walls and a floor, brine dashed, shreds below.
    private const string Jar = "M12 5v29h24V5M17 26l5-1M27 29l4-1M20 31l4 1M29 24l3 1";
    private const string Brine = "M12 11h2M17 11h3M23 11h3M29 11h3M34 11h2";

    // The jar of every lid, below its neck.
    private const string Shoulders = "M15 16c-4 2-5 5-5 9v9a3 3 0 0 0 3 3h22a3 3 0 0 0 3-3v-9c0-4-1-7-5-9z";

    public static readonly IReadOnlyList<DrawnChoice> Vegetables =
    [
        new("cabbage", "cabbage",
            "M24 6a15 14 0 1 0 .1 0zM24 34c-1-9 0-16 1-22M24 24c-4-1-7-4-8-8M24 28c4-1 7-4 9-9M14 30c2-2 3-4 3-7M34 30c-2-1-3-3-4-6",
            "M24 6a15 14 0 1 0 .1 0z"),
        new("red cabbage", "red",
        "M24 6a15 14 0 1 0 .1 0zM24 34v-9M24 25c-5 0-8-3-8-6s3-5 6-5 5 2 5 4-1 3-3 3M24 25c6 0 9-4 8-9M14 27c2 3 5 4 8 4M34 27c-2 3-4 4-7 4",
            "M24 6a15 14 0 1 0 .1 0z"),
        new("carrot", "carrots",
        "M18 15h12c2 0 2 2 2 3-1 7-4 14-8 20-4-6-7-13-8-20 0-1 0-3 2-3zM24 15V5M24 13c-2-4-4-6-7-7M24 13c2-4 4-6 7-7M17 22h5M31 25h-5M20 29h4",
            "M18 15h12c2 0 2 2 2 3-1 7-4 14-8 20-4-6-7-13-8-20 0-1 0-3 2-3z"),
        new("napa", "napa", "M19 37c-4-6-5-16-3-24 1-5 5-9 8-9s7 4 8 9c2 8 1 18-3 24zM24 37V12M24 26c-3-2-4-6-4-10M24 26c3-2 4-6 4-10M20 "
            + "36c-1-3-1-6 0-8M28 36c1-3 1-6 0-8",
            "M19 37c-4-6-5-16-3-24 1-5 5-9 8-9s7 4 8 9c2 8 1 18-3 24z"),
        new("daikon", "daikon",
        "M19 15c3-2 7-2 10 0 2 8 0 16-5 23-5-7-7-15-5-23zM24 14c-5-2-6-6-5-9 3 1 5 4 5 9 0-5 2-8 5-9 1 3 0 7-5 9M21 21h3M27 26h-3",
            "M19 15c3-2 7-2 10 0 2 8 0 16-5 23-5-7-7-15-5-23z"),
        new("cucumber", "cucumber",
        "M14 34c-4-3-4-9 0-13L29 7c4-3 8-2 10 1s1 7-2 10L23 33c-3 3-6 3-9 1zM35 8l3-3M20 25h.1M25 20h.1M30 15h.1M19 30h.1M25 27h.1M30 21h.1M34 13h.1",
            "M14 34c-4-3-4-9 0-13L29 7c4-3 8-2 10 1s1 7-2 10L23 33c-3 3-6 3-9 1z"),
    ];

    public static readonly IReadOnlyList<DrawnChoice> Covers =
    [
        new(nameof(Cover.Leaf), "leaf", Brine + Jar + "M15 19c4-5 14-5 18 0-4 4-14 4-18 0zM15 19h18M21 19l2-2M27 19l-2-2"),
        new(nameof(Cover.Weight), "weight", Brine + Jar + "M15 17h18v4H15zM15 17c2-2 16-2 18 0", "M15 17h18v4H15z"),
        new(nameof(Cover.BrineBag), "brine bag", Jar
            + "M21 8c-6 3-7 8-6 12h18c1-4 0-9-6-12zM21 8l-2-4M27 8l2-4M21 8c2 1 4 1 6 0M17 15h2M22 15h3M28 15h3",
            "M21 8c-6 3-7 8-6 12h18c1-4 0-9-6-12z"),
    ];

    public static readonly IReadOnlyList<DrawnChoice> Lids =
    [
        new(nameof(Lid.Vented), "vented", Shoulders + "M11 13h26v3H11zM21 13v-3h6v3M24 7c-2-2 2-3 0-5"),
        new(nameof(Lid.WaterSealed), "water", Shoulders + "M10 9v6h28V9M17 12V6c2-1 12-1 14 0v6M12 12h3M33 12h3"),
        new(nameof(Lid.Tight), "tight", Shoulders + "M12 8h24v7H12zM16 9v5M20 9v5M24 9v5M28 9v5M32 9v5"),
        new(nameof(Lid.Cloth), "cloth", Shoulders + "M13 9c6-5 16-5 22 0l4 9-4-1-3 2-4-2-4 2-4-2-4 2-3-2-4 1z",
        "M13 9c6-5 16-5 22 0l4 9-4-1-3 2-4-2-4 2-4-2-4 2-3-2-4 1z"),
    ];
}
