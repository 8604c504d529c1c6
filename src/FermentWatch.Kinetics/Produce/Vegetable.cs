using System.Diagnostics.CodeAnalysis;
using FermentWatch.Kinetics.Produce.Catalogue;

namespace FermentWatch.Kinetics.Produce;

/// <summary>
/// A vegetable the model has figures for: all that is known of it, in one entry. To add one is to add an entry to a page of
/// <c>Catalogue</c>, and its rows to the published tables beside the reference tests. Raw pH: FDA lists of approximate pH of foods (2003
/// and earlier). Malic and citric acid are from memory of general tables and carry a wide prior. What is usual is common practice, no source.
/// </summary>
public sealed class Vegetable
{
    /// <summary>Spread of a vegetable whose figures are from memory, over that of one whose figures were read.</summary>
    private const double SpreadFromMemory = 1.8;

    /// <summary>Every vegetable of the catalogue, in the order in which they are offered.</summary>
    public static IReadOnlyList<Vegetable> All { get; } =
        [.. Heads.Entries.Concat(Leaves.Entries).Concat(Roots.Entries).Concat(Fruits.Entries).OrderBy(each => each.ListedAs)];

    /// <summary>Its place where vegetables are offered, from 1: no two share one, and a new one comes last.</summary>
    public required int ListedAs { get; init; }

    /// <summary>The name it is asked for by, in lower case; also its identity in stored recipes.</summary>
    public required string Name { get; init; }

    /// <summary>Other names it answers to.</summary>
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>What 100 g of it hold.</summary>
    public required Composition Composition { get; init; }

    /// <summary>pH of the raw vegetable.</summary>
    public required double RawPh { get; init; }

    /// <summary>Malic acid, mmol per kg of vegetable.</summary>
    public required double MalicMillimolesPerKilogram { get; init; }

    /// <summary>Citric acid, mmol per kg of vegetable.</summary>
    public required double CitricMillimolesPerKilogram { get; init; }

    /// <summary>
    /// Share of the minerals' charge that chloride, sulphate and nitrate do not balance, 0 to 1. What is fitted is what the calibration
    /// prints (--code); PARAMETERS.md tells from which rows.
    /// </summary>
    public required double StrongIonShare { get; init; }

    /// <summary>What lactic acid bacteria it brings along.</summary>
    public required FloraKind Flora { get; init; }

    /// <summary>Whether its figures were recalled rather than read, and no published course of it or its kin was fitted.</summary>
    public bool IsFromMemory { get; init; }

    /// <summary>
    /// The name under which it must be made known to whoever eats of it (Regulation (EU) No 1169/2011 on the provision of food information
    /// to consumers, 2011, Annex II); null where it is no such thing.
    /// </summary>
    public string? Allergen { get; init; }

    /// <summary>How it is usually cut.</summary>
    public required Cut UsualCut { get; init; }

    /// <summary>Highest published acidity of it, per cent lactic; null where nothing is published.</summary>
    public double? EndPercentLactic { get; init; }

    /// <summary>The published recipe that is its own; null where none is known here.</summary>
    public PublishedRecipe? Recipe { get; init; }

    /// <summary>How long it keeps once sour and cold, days; null where nothing is published of it alone.</summary>
    public int? KeptColdDays { get; init; }

    /// <summary>What a head of it weighs; null where nobody counts it by the head.</summary>
    public HeadMass? Head { get; init; }

    /// <summary>Whether it is rich in nitrate (EFSA 2008, Nitrate in vegetables, The EFSA Journal 689:1-79, from memory).</summary>
    public bool IsRichInNitrate { get; init; }

    /// <summary>Whether it is published to ferment at 10 C, where most hardly do.</summary>
    public bool FermentsInTheCold { get; init; }

    /// <summary>Whether a published mash of it stayed above pH 4.6 without a starter.</summary>
    public bool MashMayStayAboveTheLine { get; init; }

    /// <summary>How many times wider than cabbage's the spread of its sugar, buffer and first counts is taken, for want of figures.</summary>
    internal double Ignorance => IsFromMemory ? SpreadFromMemory : 1;

    /// <summary>The vegetable with a name or alias that is known to be one.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static Vegetable Of(string name) =>
        TryFind(name, out Vegetable? vegetable) ? vegetable : throw new ArgumentException($"The catalogue has no '{name}'.", nameof(name));

    /// <summary>Finds a vegetable by name or alias, whatever the case and the spaces around it.</summary>
    public static bool TryFind(string? name, [NotNullWhen(true)] out Vegetable? vegetable)
    {
        string wanted = string.Join(' ', (name ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        vegetable = All.FirstOrDefault(each => Answers(each, wanted));
        return vegetable is not null;
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static bool Answers(Vegetable vegetable, string wanted) =>
        vegetable.Name.Equals(wanted, StringComparison.OrdinalIgnoreCase)
        || vegetable.Aliases.Any(alias => alias.Equals(wanted, StringComparison.OrdinalIgnoreCase));
}

/// <summary>Published recipes that are told of their own vegetables only.</summary>
public enum PublishedRecipe
{
    /// <summary>Sauerkraut: USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015.</summary>
    Kraut = 1,

    /// <summary>Kimchi: Colorado State University Extension; Oregon State University SP-1007.</summary>
    Kimchi = 2,
}

/// <summary>What a head weighs as bought, and how much of it is left when it is prepared.</summary>
public sealed record HeadMass
{
    /// <summary>A small head, kg.</summary>
    public required double SmallKilograms { get; init; }

    /// <summary>A medium head, kg; also one of which nobody said how large it is.</summary>
    public required double MediumKilograms { get; init; }

    /// <summary>A large head, kg.</summary>
    public required double LargeKilograms { get; init; }

    /// <summary>What is left of it without outer leaves and core, 0 to 1.</summary>
    public required double PreparedShare { get; init; }
}
