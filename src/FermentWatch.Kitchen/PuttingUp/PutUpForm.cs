using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>What somebody typed to put up jars, as typed, so that nothing is lost when a field must be corrected.</summary>
public record PutUpForm
{
    /// <summary>The vegetable, by its name in the catalogue, or <see cref="SomethingElse"/>.</summary>
    public string? What { get; init; }

    /// <summary>The name of something else, of which nobody has figures: nothing is forecast of it.</summary>
    public string? ItsName { get; init; }

    /// <summary>What stands for a vegetable that is not in the catalogue.</summary>
    public const string SomethingElse = "something else";

    /// <summary>How much of it went into each jar: a mass, or heads of cabbage (<c>2 heads</c>).</summary>
    public string? HowMuch { get; init; }

    /// <summary>More vegetables and seasonings, one a line or comma: name and mass (<c>carrot 200g, ginger 20g</c>).</summary>
    public string? Also { get; init; }

    /// <summary>How it was cut; empty takes what is usual for the vegetable.</summary>
    public string? Cut { get; init; }

    /// <summary>Salt in per cent of vegetables and added water together, its mass in each jar (<c>20 g</c>), or <c>by taste</c>.</summary>
    public string? Salt { get; init; }

    /// <summary>What the per cent of salt are of, a name of <see cref="PuttingUp.SaltBasis"/>; empty is vegetables and added water
    /// together.</summary>
    public string? SaltOf { get; init; }

    /// <summary>Whether the salt was weighed or measured by the spoon; empty is weighed.</summary>
    public string? SaltKnowledge { get; init; }

    /// <summary>What the tub weighed that the salt of all jars alike was taken from, before; with <see cref="TubAfter"/> it goes before
    /// <see cref="Salt"/>.</summary>
    public string? TubBefore { get; init; }

    /// <summary>What it weighed after.</summary>
    public string? TubAfter { get; init; }

    /// <summary>Water added to each jar; empty is none.</summary>
    public string? AddedWater { get; init; }

    /// <summary>Number of the earlier jar whose brine went in; empty is none.</summary>
    public string? StarterFrom { get; init; }

    /// <summary>How much of its brine went into each jar.</summary>
    public string? StarterBrine { get; init; }

    /// <summary>Vinegar put into each jar, by mass or volume; empty is none.</summary>
    public string? Vinegar { get; init; }

    /// <summary>Its acetic acid, per cent; empty is 5, as table vinegar has.</summary>
    public string? VinegarStrength { get; init; }

    /// <summary>Size of the vessel.</summary>
    public string? Vessel { get; init; }

    public string? Cover { get; init; }

    public string? Lid { get; init; }

    /// <summary>Name of the place where it stands.</summary>
    public string? Place { get; init; }

    /// <summary>How sour it should be, a name of <see cref="Jars.Sourness"/> or its number 1 to 5.</summary>
    public string? Target { get; init; }

    /// <summary>How many alike; empty is one.</summary>
    public string? HowMany { get; init; }

    /// <summary>When it was packed, on the household's clock (<c>2026-10-04</c> or <c>2026-10-04T18:30</c>); empty is now.</summary>
    public string? PackedAt { get; init; }

    /// <summary>A name; empty takes that of the vegetable.</summary>
    public string? Name { get; init; }

    /// <summary>Says that what looks odd is right.</summary>
    public bool ItIsRight { get; init; }
}

/// <summary>A form that was read: the jars to be filed, or every field that was wrong or odd.</summary>
/// <param name="Jars">Jars without numbers, each with its first placement; empty if anything was wrong or is asked about.</param>
/// <param name="Refusals">What was wrong, every field at once.</param>
/// <param name="Doubts">What is odd and was not insisted on.</param>
public sealed record PutUpOrder(IReadOnlyList<Jar> Jars, IReadOnlyList<Refusal> Refusals, IReadOnlyList<Doubt> Doubts)
{
    public PutUpOrder(IReadOnlyList<Jar> jars) : this(jars, [], [])
    {
    }
}

/// <summary>A correction that was read: what is to be filed, or every field that was wrong or odd.</summary>
/// <param name="Corrected">The jar as it is to stand, its placement that of the beginning; null if anything was wrong or is asked about.</param>
/// <param name="Corrections">What changes, with what stood before; empty where all stands as typed already.</param>
/// <param name="Refusals">What was wrong.</param>
/// <param name="Doubts">What is odd and was not insisted on.</param>
public sealed record CorrectionOrder(
    Jar? Corrected, IReadOnlyList<JarCorrection> Corrections, IReadOnlyList<Refusal> Refusals, IReadOnlyList<Doubt> Doubts);

/// <summary>Something that is merely odd: asked about once, taken when whoever typed it says that it is right.</summary>
/// <param name="Field">The field it is about.</param>
/// <param name="Question">One plain question, with what was probably meant where that can be told.</param>
public sealed record Doubt(string Field, string Question);
