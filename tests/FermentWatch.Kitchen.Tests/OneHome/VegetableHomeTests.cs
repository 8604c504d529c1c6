using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kitchen.Tests.OneHome;

/// <summary>
/// What is known of a vegetable stands in its entry and nowhere else: to add one is to touch one file. A file that names one all the same is
/// listed below with what it names and why; a switch over vegetables anywhere else fails here, and so does a name more in a listed file.
/// </summary>
public class VegetableHomeTests
{
    private static readonly string[] Names = [.. Vegetable.All.SelectMany(NamesOf)];

    private static readonly (string File, IReadOnlyList<string> Named)[] Naming =
        [.. SourceFile.All.Select(file => (file.Name, file.Says(Names))).Where(each => each.Item2.Count > 0)];

    private static readonly string[] Pages = ["Heads.cs", "Leaves.cs", "Roots.cs", "Fruits.cs"];

    /// <summary>What cabbage is called once it is sour: published advice speaks of it.</summary>
    private const string Dish = "kraut";

    /// <summary>Texts, as they are published or as an example; none decides anything by the name.</summary>
    private static readonly Dictionary<string, (string Named, string Why)> Exceptions = new()
    {
        ["AcidLineWords.cs"] = ("cabbage", "quotes the tested recipe of kraut"),
        ["TestedRecipe.cs"] = ("napa, daikon, radish", "quotes what is published of the cold"),
        ["MoreSigns.cs"] = ("cucumber", "the title of a source"),
        ["SightingGuides.cs"] = ("cabbage, cucumber, garlic", "quotes guides and the title of a source"),
        ["Cautions.cs"] = ("cabbage, chinese cabbage, daikon, beet, radish, celery, fennel", "quotes cautions and the title of a source"),
        ["Bubbling.cs"] = ("cabbage, radish", "what a jar smells of"),
        ["JarWarnings.cs"] = ("chilli", "quotes what is published of chilli mash"),
        ["IngredientList.cs"] = ("carrot", "an example of what to type"),
        ["RecipeForm.cs"] = ("cabbage, carrot", "an example of what to type"),
        ["RecipeFormPage.razor"] = ("cabbage, carrot", "an example of what to type"),
        ["BrineQuestion.cs"] = ("cabbage, cucumbers", "whose juice disturbs a hydrometer"),
        ["PutUp.cs"] = ("cabbage", "an example of what to type"),
        ["JarPutUpVerb.cs"] = ("carrot", "an example of what to type"),
        ["OutlookOptions.cs"] = ("cabbage, garlic", "an example of what to type, and of a seasoning"),
        ["RecipeReader.cs"] = ("cabbage", "an example of what to type"),
        ["CorrectPage.razor"] = ("carrot", "an example of what to type"),
        ["PutUpPage.razor"] = ("carrot", "an example of what to type"),
        ["DrawnChoices.cs"] = ("cabbage, red cabbage, napa, carrot, carrots, cucumber, daikon", "drawings of what most jars hold"),
        ["NumberNine.cs"] = ("cabbage, red cabbage, napa, carrot, carrots, cucumber, cucumbers, daikon, radish, garlic, chilli",
        "the jars of the demo"),
    };

    /// <summary>The number of files a trial entry touches, taken from those that are there.</summary>
    [Fact]
    public void File_NamingAVegetable_IsItsPageAlone() =>
        Assert.All(Vegetable.All, vegetable => Assert.Contains(
            Assert.Single(Naming, each => !Exceptions.ContainsKey(each.File) && each.Named.Contains(vegetable.Name)).File, Pages));

    [Fact]
    public void File_NamingAVegetableForAReason_NamesNoOther()
    {
        var named = Naming.Where(each => !Pages.Contains(each.File)).Select(each => (each.File, string.Join(", ", each.Named)));
        Assert.Equal(Exceptions.Select(each => (each.Key, each.Value.Named)).Order(), named.Order());
    }

    [Theory]
    [InlineData("""_ => produce switch { "napa" or "pak choi" => 1, _ => 2 };""", "napa, pak choi")]
    [InlineData("""if (vegetable.Name == "carrot") // or beet""", "carrot")]
    [InlineData("""<p>Brined cucumbers end near 0.9 %</p> @* carrot *@""", "cucumbers")]
    [InlineData("""/// <summary>Cabbage by the head.</summary>""", "")]
    [InlineData("""string place = "http://garlic";""", "garlic")]
    public void Says_SwitchTextOrComment_FindsWhatIsNoComment(string text, string named) =>
        Assert.Equal(named, string.Join(", ", SourceFile.Of("Any.cs", text).Says(Names)));

    [Fact]
    public void Catalogue_EveryEntry_StandsAloneInItsNamesAndItsPlace()
    {
        Assert.Equal(Enumerable.Range(1, Vegetable.All.Count), Vegetable.All.Select(each => each.ListedAs));
        string[] names = [.. Vegetable.All.SelectMany(each => each.Aliases.Prepend(each.Name))];
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.All(names, name => Assert.Equal(name.ToLowerInvariant(), name));
    }

    private static IEnumerable<string> NamesOf(Vegetable vegetable) => vegetable.Aliases.Prepend(vegetable.Name).Where(name => name != Dish);
}
