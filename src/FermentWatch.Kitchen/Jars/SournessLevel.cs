using System.Globalization;
using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kitchen.Jars;

/// <summary>
/// A step of sourness in words with the titratable acidity beside it. 1.5 % is what the US grades call sauerkraut
/// (7 CFR 52.3451; FDA CPG 585.750), 0.7 % is where the gas-forming stage ends (Hutkins 2006); the steps between are this
/// project's own.
/// </summary>
/// <param name="Step">The step.</param>
/// <param name="Words">What people call it.</param>
/// <param name="AcidityPercentLactic">Titratable acidity at which it is reached, per cent lactic.</param>
public sealed record SournessLevel(Sourness Step, string Words, double AcidityPercentLactic)
{
    /// <summary>The five steps, mildest first.</summary>
    public static readonly IReadOnlyList<SournessLevel> All =
    [
        new(Sourness.ALittleSour, "a little sour", 0.7),
        new(Sourness.BetweenALittleSourAndSour, "between a little sour and sour", 0.95),
        new(Sourness.Sour, "sour", 1.2),
        new(Sourness.BetweenSourAndVerySour, "between sour and very sour", 1.5),
        new(Sourness.VerySour, "very sour", 1.8),
    ];

    /// <summary>
    /// How sour a vegetable ends, per cent lactic: as published, or where nothing is, as much acid as it holds sugar; null where nobody
    /// has figures.
    /// </summary>
    public static double? EndOf(string produce) =>
        Vegetable.TryFind(produce, out Vegetable? vegetable) ? vegetable.EndPercentLactic ?? vegetable.Composition.SugarsGrams : null;

    /// <summary>The steps a vegetable can reach, mildest first; at least the mildest, and all where nobody has figures.</summary>
    public static IReadOnlyList<SournessLevel> ReachedBy(string produce) =>
        [.. All.Where(level => level.Step == Sourness.ALittleSour || !(level.AcidityPercentLactic > EndOf(produce)))];

    /// <summary>What is taken where nobody chose: sour, or as sour as the vegetable gets.</summary>
    public static Sourness Usual(string produce) => ReachedBy(produce).Last(level => level.Step <= Sourness.Sour).Step;

    public static SournessLevel Of(Sourness step) => All.First(level => level.Step == step);

    /// <summary>The words with the per cent beside them.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Words} (about {AcidityPercentLactic:0.##} % acid)");
}

/// <summary>How sour a household wants a jar, in five steps.</summary>
public enum Sourness
{
    ALittleSour = 1,
    BetweenALittleSourAndSour = 2,
    Sour = 3,
    BetweenSourAndVerySour = 4,
    VerySour = 5,
}
