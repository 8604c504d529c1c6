using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Kitchen.Tests.OneHome;

/// <summary>
/// What is known of a quantity stands in its entry and nowhere else: to add one is to touch one file. A file that names one all the same is
/// listed below with what it names and why; a switch over quantities anywhere else fails here, and so does a name more in a listed file.
/// </summary>
public class QuantityHomeTests
{
    private const string Home = "Quantity.cs";

    private static readonly string[] Members = [.. Enum.GetNames<Quantity>().Select(name => $"Quantity.{name}")];

    /// <summary>Whoever needs the readings of one quantity asks for it by name; none tells quantities apart but a probe's arithmetic.</summary>
    private static readonly Dictionary<string, (string Named, string Why)> Exceptions = new()
    {
        ["ForecastPass.cs"] = ("Quantity.Temperature", "the model reads temperatures: when the newest came"),
        ["MeansOfJars.cs"] = ("Quantity.Temperature", "the model reads temperatures: which means stand around a jar"),
        ["TemperatureHistory.cs"] = ("Quantity.Temperature", "the model reads temperatures: what they were"),
        ["AskPlan.cs"] = ("Quantity.Temperature", "a plan goes by how warm its place was lately"),
        ["CourseReader.cs"] = ("Quantity.Temperature", "the picture of a jar shows how warm it was"),
        ["SensorWatch.cs"] = ("Quantity.Temperature", "only thermometers are watched for a moved unit and compared"),
        ["DryPlaces.cs"] = ("Quantity.Humidity", "dry air is told by humidity"),
        ["ProbeStanding.cs"] = ("Quantity.Temperature, Quantity.Ph, Quantity.Millivolts", "potential to pH at the sample's temperature"),
        ["SensorDevice.cs"] = ("Quantity.Temperature, Quantity.Ph", "what the demo's gear sends"),
    };

    /// <summary>The number of files a trial entry touches, taken from those that are there.</summary>
    [Fact]
    public void File_NamingAQuantity_IsTheCatalogueAlone() =>
        Assert.All(Members, member => Assert.Equal(
            [Home], SourceFile.All.Where(file => !Exceptions.ContainsKey(file.Name) && file.Says([member]).Count > 0).Select(file => file.Name)));

    [Fact]
    public void File_NamingAQuantityForAReason_NamesNoOther()
    {
        var named = SourceFile.All.Where(file => file.Name != Home).Select(file => (file.Name, string.Join(", ", file.Says(Members))))
            .Where(each => each.Item2.Length > 0);
        Assert.Equal(Exceptions.Select(each => (each.Key, each.Value.Named)).Order(), named.Order());
    }

    [Theory]
    [InlineData("Quantity.Ph => 1, Kitchen.Readings.Quantity.Humidity => 2, // Quantity.Temperature", "Quantity.Ph, Quantity.Humidity")]
    [InlineData("public required Quantity Quantity { get; init; }", "")]
    public void Says_SwitchOrComment_FindsWhatIsNoComment(string text, string named) =>
        Assert.Equal(named, string.Join(", ", SourceFile.Of("Any.cs", text).Says(Members)));

    [Fact]
    public void OneOf_SeveralWords_AreSaidAsAChoice() => Assert.Equal("temperature, ph or mass", MeasureUnit.OneOf(["temperature", "ph", "mass"]));

    [Fact]
    public void Catalogue_EveryQuantity_HasOneEntryWithNamesAndUnitsOfItsOwn()
    {
        Assert.Equal(Enum.GetValues<Quantity>(), MeasuredQuantity.All.Select(each => each.Key).Order());
        Assert.Equal(MeasuredQuantity.All.Count, MeasuredQuantity.All.Select(each => each.Name).Distinct().Count());
        Assert.Equal(MeasureUnit.All.Count, MeasureUnit.All.Select(each => each.Symbol).Distinct().Count());
        Assert.All(MeasuredQuantity.All, each => Assert.All(each.Units, unit => Assert.Equal(each.Key, unit.Quantity)));
        Assert.Equal(["temperature"], MeasuredQuantity.All.Where(each => each.Say is null).Select(each => each.Name));
        string[] spellings = [.. MeasureUnit.All.SelectMany(each => each.Spellings)];
        Assert.Equal(spellings.Length, spellings.Distinct().Count());
        Assert.All(spellings, spelling => Assert.Equal(spelling.ToUpperInvariant(), spelling));
    }
}
