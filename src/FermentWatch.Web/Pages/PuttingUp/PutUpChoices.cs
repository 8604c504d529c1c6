using System.Globalization;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Words;
using FermentWatch.Web.Pages.Shared;

namespace FermentWatch.Web.Pages.PuttingUp;

/// <summary>What can be tapped on the put-up page.</summary>
internal static class PutUpChoices
{
    public static readonly IReadOnlyList<Choice> Vegetables =
        [.. Vegetable.All.Select(vegetable => new Choice(vegetable.Name, vegetable.Name)),
            new Choice(PutUpForm.SomethingElse, "something else (its name under More)")];

    /// <summary>Those that are not drawn.</summary>
    public static readonly IReadOnlyList<Choice> OtherVegetables =
        [.. Vegetables.Where(choice => DrawnChoices.Vegetables.All(drawn => drawn.Value != choice.Value)).Select(choice =>
            choice.Value == PutUpForm.SomethingElse ? choice with { Label = "something else" } : choice)];

    public static readonly IReadOnlyList<Choice> SaltOf =
        [new(nameof(SaltBasis.VegetablesAndWater), "vegetables and added water"), new(nameof(SaltBasis.Vegetables), "the vegetables alone"),
            new(nameof(SaltBasis.Brine), "the brine poured on")];

    /// <summary>2.25 to 2.5 % is the kraut recipe (Univ. of Minnesota Extension; Oregon State SP 50-745); 3 % within the grade rules (FDA CPG
    /// 585.750).</summary>
    public static readonly IReadOnlyList<Choice> Salt =
        [new("2", "2 %"), new("2.25", "2.25 %"), new("2.5", "2.5 %"), new("3", "3 %"), new("by taste", "By taste")];

    public static readonly IReadOnlyList<Choice> SaltKnown = [new("Weighed", "Weighed"), new("Measured", "By the spoon")];

    public static readonly IReadOnlyList<Choice> Cuts = [.. Enum.GetValues<Cut>().Select(cut => new Choice(cut.ToString(), JarWords.Of(cut)))];

    public static readonly IReadOnlyList<Choice> Covers =
        [.. Enum.GetValues<Cover>().Select(cover => new Choice(cover.ToString(), JarWords.Of(cover)))];

    public static readonly IReadOnlyList<Choice> Lids = [.. Enum.GetValues<Lid>().Select(lid => new Choice(lid.ToString(), JarWords.Of(lid)))];

    public static readonly IReadOnlyList<Choice> Sour = Steps(SournessLevel.All);

    /// <summary>The steps this vegetable can reach, and the one that stands.</summary>
    public static IReadOnlyList<Choice> SourOf(string produce, Sourness standing) =>
        Steps(SournessLevel.All.Where(level => level.Step == standing || SournessLevel.ReachedBy(produce).Contains(level)));

    private static Choice[] Steps(IEnumerable<SournessLevel> levels) =>
    [
        .. levels.Select(level => new Choice(level.Step.ToString(),
            string.Create(CultureInfo.InvariantCulture, $"{level.Words} ({level.AcidityPercentLactic:0.##} % acid)"))),
    ];

    public static IReadOnlyList<Choice> Vessels(MassUnit unit) => unit == MassUnit.Pound
        ? [new("1pt", "1 pint"), new("1qt", "1 quart"), new("2qt", "half a gallon"), new("1gal", "1 gallon"), new("2gal", "2 gallons"),
            new("5gal", "5 gallons")]
        : [new("0.5l", "0.5 l"), new("1l", "1 l"), new("1.5l", "1.5 l"), new("2l", "2 l"), new("3l", "3 l"), new("5l", "5 l"), new("10l", "10 l"),
            new("20l", "20 l")];

    /// <summary>Jars whose brine may go in, and the one whose brine did.</summary>
    public static IReadOnlyList<Choice> Starters(IEnumerable<StarterSource> ready, Starter? own = null)
    {
        List<Choice> choices = [.. ready.Select(each =>
            new Choice($"{each.Number}", string.Create(CultureInfo.InvariantCulture, $"jar {each.Number}, {each.Name}, pH {each.Ph:0.0#}")))];
        if (own is not null && choices.TrueForAll(each => each.Value != $"{own.FromJar}"))
            choices.Insert(0, new Choice($"{own.FromJar}", $"jar {own.FromJar}"));
        return choices;
    }

    public static string UsualVessel(MassUnit unit) => unit == MassUnit.Pound ? "1qt" : "1l";
}
