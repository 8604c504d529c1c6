using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>Between which per cent of salt, of vegetables and added water together, nothing need be done about a jar, and who says so.</summary>
/// <param name="LowestPercent">The least; nothing is ever thinned below it.</param>
/// <param name="HighestPercent">The most.</param>
/// <param name="Source">Who says so.</param>
public sealed record SaltRange(double LowestPercent, double HighestPercent, string Source)
{
    // How far a jar may be off where nothing is published of its vegetable, percentage points: this project's own figure.
    private const double OwnTolerance = 0.5;

    private static readonly SaltRange Kraut = new(2, 3, "2 to 3 % is published for kraut: FDA CPG 585.750; 7 CFR 52.3451");

    private static readonly SaltRange Kimchi = new(2, 5, "2 to 5 % is published for kimchi: Colorado State University Extension; Oregon State "
        + "SP-1007");

    /// <summary>The least that a vegetable is salted with: as published of it, else the least that anything is forecast of.</summary>
    /// <param name="produce">Its name.</param>
    public static double LowestFor(string produce) => Published(produce)?.LowestPercent ?? SaltDose.LowestPercent;

    /// <summary>The range around what was intended: as published of the vegetable, else half a point either way, never below the least.</summary>
    /// <param name="produce">The vegetable of which there is most.</param>
    /// <param name="intendedPercent">What was intended, at least <see cref="LowestFor"/>.</param>
    public static SaltRange Around(string produce, double intendedPercent) => Published(produce) is { } published
        ? published with { HighestPercent = Math.Max(published.HighestPercent, intendedPercent) }
        : new SaltRange(Math.Max(SaltDose.LowestPercent, intendedPercent - OwnTolerance),
            Math.Min(SaltDose.HighestPercent, intendedPercent + OwnTolerance), "half a point either way: common practice, no source");

    /// <summary>Whether what is published of kraut is published of it.</summary>
    public static bool IsKraut(string produce) => Published(produce) == Kraut;

    private static SaltRange? Published(string produce) => Vegetable.TryFind(produce, out Vegetable? vegetable) ? vegetable.Recipe switch
    {
        PublishedRecipe.Kraut => Kraut,
        PublishedRecipe.Kimchi => Kimchi,
        _ => null,
    } : null;
}
