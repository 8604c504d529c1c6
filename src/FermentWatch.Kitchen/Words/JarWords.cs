using System.Globalization;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Words;

/// <summary>How a jar is cut, covered and closed, in words.</summary>
public static class JarWords
{
    /// <summary>How the vegetables were cut.</summary>
    public static string Of(Cut cut) => cut switch
    {
        Cut.Shredded => "shredded",
        Cut.SaltedLeaves => "salted leaves",
        Cut.Sliced => "sliced",
        Cut.Pieces => "pieces",
        Cut.Whole => "whole",
        _ => throw new ArgumentOutOfRangeException(nameof(cut), cut, "Not a cut."),
    };

    /// <summary>What holds the vegetables under.</summary>
    public static string Of(Cover cover) => cover switch
    {
        Cover.Leaf => "under a leaf",
        Cover.Weight => "under a weight",
        Cover.BrineBag => "under a bag of brine",
        _ => throw new ArgumentOutOfRangeException(nameof(cover), cover, "Not a cover."),
    };

    /// <summary>Brine of an earlier jar that was put in.</summary>
    public static string Of(Starter? starter, MassUnit unit) =>
        starter is null ? "none" : $"{MeasureWords.Mass(starter.MassKilograms, unit)} from jar {starter.FromJar}";

    /// <summary>Vinegar that was put in, with its strength.</summary>
    public static string Of(Vinegar? vinegar, MassUnit unit) => vinegar is null ? "none"
        : string.Create(CultureInfo.InvariantCulture, $"{MeasureWords.Mass(vinegar.MassKilograms, unit)} of {vinegar.AceticPercent:0.##} % acid");

    /// <summary>How the jar is closed.</summary>
    public static string Of(Lid lid) => lid switch
    {
        Lid.Vented => "vented lid",
        Lid.WaterSealed => "water-sealed rim",
        Lid.Tight => "tight lid",
        Lid.Cloth => "cloth",
        _ => throw new ArgumentOutOfRangeException(nameof(lid), lid, "Not a lid."),
    };
}
