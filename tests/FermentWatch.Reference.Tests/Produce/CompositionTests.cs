using System.Globalization;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Reference.Tests.Produce;

/// <summary>
/// composition.csv (USDA SR; raw pH by FDA) and composition_ifct.csv (Indian Food Composition Tables 2017): the figures of each vegetable are
/// those of the rows it names, or their means, but for sugars, which are SR's.
/// </summary>
public class CompositionTests
{
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Usda = Figures.Read("composition.csv");
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Ifct = Figures.Read("composition_ifct.csv");

    public static TheoryData<string> Vegetables() => [.. Vegetable.All.Select(vegetable => vegetable.Name)];

    [Theory]
    [MemberData(nameof(Vegetables))]
    public void Composition_EveryVegetable_IsThatOfItsRows(string name)
    {
        Composition held = Vegetable.Of(name).Composition;
        var rows = held.Tables.Select(Row).ToList();
        double Mean(string column) => rows.Average(row => Figures.Number(row, column));

        Assert.Equal(Mean("water_g"), held.WaterGrams, 0.051);
        Assert.Equal(Mean("protein_g"), held.ProteinGrams, 0.0051);
        Assert.Equal(Figures.Number(rows[0], "sugars_g"), held.SugarsGrams, 0.0001);
        Assert.Equal(Mean("ca_mg"), held.CalciumMilligrams, 0.56);
        Assert.Equal(Mean("mg_mg"), held.MagnesiumMilligrams, 0.56);
        Assert.Equal(Mean("p_mg"), held.PhosphorusMilligrams, 0.56);
        Assert.Equal(Mean("k_mg"), held.PotassiumMilligrams, 0.56);
        Assert.Equal(Mean("na_mg"), held.SodiumMilligrams, 0.56);
    }

    [Theory]
    [MemberData(nameof(Vegetables))]
    public void Vegetable_ReadOrRecalled_SaysWhich(string name)
    {
        Vegetable vegetable = Vegetable.Of(name);
        IReadOnlyDictionary<string, string> row = Row(vegetable.Composition.Tables[0]);
        Assert.Equal((name, vegetable.IsFromMemory ? "memory" : "read"), (row["vegetable"], row["status"]));
        if (row["initial_ph"].Split('-') is [var low, var high])
            Assert.InRange(vegetable.RawPh, double.Parse(low, CultureInfo.InvariantCulture), double.Parse(high, CultureInfo.InvariantCulture));
    }

    private static IReadOnlyDictionary<string, string> Row(string table) => table.Split(' ') switch
    {
        ["IFCT", var code] => Ifct.Single(row => row["code"] == code),
        _ => Usda.Single(row => row["source"].Split(" (")[0] == table),
    };
}
