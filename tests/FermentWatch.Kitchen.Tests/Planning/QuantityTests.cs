using FermentWatch.Kitchen.Jars;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Tests.Planning;

/// <summary>Worked examples of published guidance.</summary>
public class QuantityTests
{
    private const double Pound = 0.45359237, Quart = 0.946352946, Gallon = 3.785411784;

    /// <summary>USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015: 25 lb of cabbage give about 9 quarts. Univ. of California Master Food
    /// Preserver: 5 lb about 5 pints, 2 lb about 1 quart.</summary>
    [Theory]
    [InlineData(25, 9)]
    [InlineData(5, 2.5)]
    [InlineData(2, 1)]
    public void LitresPerKilogram_PublishedRecipe_LiesBetweenTheEndsThatArePlannedWith(double pounds, double quarts) =>
        Assert.InRange(quarts * Quart / (pounds * Pound), Servings.LeastLitresPerKilogram - 1e-9, Servings.MostLitresPerKilogram + 1e-9);

    /// <summary>The same recipes: 2.0 to 2.8 lb of cabbage to a quart at the table, within the 2.0 to 3.1 lb
    /// that are derived from them elsewhere.</summary>
    [Fact]
    public void LitresPerKilogram_EndsOfThePlan_AreTwoToThreePoundsAQuart()
    {
        Assert.Equal(2.0, Quart / Servings.MostLitresPerKilogram / Pound, 0.001);
        Assert.Equal(2.78, Quart / Servings.LeastLitresPerKilogram / Pound, 0.005);
    }

    /// <summary>Michigan State; Cornell: 1 gallon of vessel for 5 lb of vegetables.</summary>
    [Theory]
    [InlineData(Gallon, 5)]
    [InlineData(5 * Gallon, 25)]
    public void Fill_Crock_IsFivePoundsAGallon(double litres, double pounds) =>
        Assert.InRange(litres * VesselFill.Of(litres, Cut.Shredded).UsualKilogramsPerLitre / Pound, pounds * 0.99, pounds * 1.01);

    /// <summary>Univ. of California Master Food Preserver: 2 lb fill a quart.</summary>
    [Fact]
    public void Fill_Quart_IsAtMostTwoPoundsAndUsuallyALittleLess()
    {
        VesselFill fill = VesselFill.Of(Quart, Cut.Shredded);
        Assert.Equal(2.0, Quart * fill.MostKilogramsPerLitre / Pound, 0.01);
        Assert.Equal(1.77, Quart * fill.UsualKilogramsPerLitre / Pound, 0.01);
    }

    /// <summary>USDA SR 11109: refuse 20 %; small, medium and large heads 714, 908 and 1248 g.</summary>
    [Fact]
    public void Heads_TenKilogramsPrepared_AreBoughtWithAFifthMore()
    {
        Vegetable cabbage = Vegetable.Of("cabbage");
        var shopping = new Shopping(10, 225, 0);
        Assert.Equal(12.5, shopping.BoughtKilograms(cabbage), 1e-9);
        Assert.Equal((11, 14, 18), shopping.Heads(cabbage));
        Assert.True(Heads.TryRead("2 heads", cabbage.Head!, out double prepared));
        Assert.Equal(2 * 0.908 * 0.8, prepared, 1e-9);
    }

    /// <summary>USDA Guide 6: 4 to 5 inches from brine to rim of a crock. NDSU; Michigan State: 1 to 2 inches of brine over the solids.</summary>
    [Fact]
    public void Headspace_CrockAndJar_AreAsPublishedAndBrineIsAnInchOrTwoOfTheirWidth()
    {
        Assert.Equal((4 * 2.54, 5 * 2.54), VesselFill.HeadspaceCentimetres(5 * Gallon));
        Assert.Equal((2.54, 2.54), VesselFill.HeadspaceCentimetres(Quart));
        (double least, double most) = VesselFill.BrineToRiseMillilitres(Quart);
        // A quart jar is some 8.6 cm wide inside: an inch of it is 148 ml.
        Assert.InRange(least, 140, 160);
        Assert.Equal(2 * least, most, 1e-9);
    }

    [Fact]
    public void Shopping_JarsAndACrock_IsWhatGoesIntoAllOfThem()
    {
        Shopping all = Shopping.For([new Vessels(Quart, 4), new Vessels(10, 1)], Cut.Shredded, 2.5);
        Assert.Equal((4 * Quart * 0.85) + (10 * 0.6), all.PreparedKilograms, 1e-9);
        Assert.Equal(25 * all.PreparedKilograms, all.SaltGrams, 1e-9);
        Assert.Equal(0, all.WaterKilograms);
    }

    [Fact]
    public void Shopping_WholeVegetables_AreSaltedWithTheirWater()
    {
        Shopping one = Shopping.For([new Vessels(1, 1)], Cut.Whole, 3);
        Assert.Equal((0.6, 0.4, 30.0), (one.PreparedKilograms, one.WaterKilograms, Math.Round(one.SaltGrams, 9)));
    }

    [Theory]
    [InlineData("20 x 1 qt, 2 x 5 l", "20 x 1 qt, 2 x 5.283 qt")]
    [InlineData("20x1qt;2 × 0,5 l", "20 x 1 qt, 2 x 0.528 qt")]
    [InlineData("12 quarts", "12 x 1 qt")]
    [InlineData("1 gal", "4 qt")]
    [InlineData("quart", "1 qt")]
    public void ReadVessels_AsPeopleWriteThem_AreSizesWithTheirNumber(string typed, string read)
    {
        var reader = new FieldReader();
        Assert.Equal(read, VesselList.Write(reader.ReadVessels("vessels", typed), MassUnit.Pound));
        Assert.Empty(reader.Refusals);
    }

    [Theory]
    [InlineData("")]
    [InlineData("twenty jars")]
    [InlineData("20 x 5 kg")]
    [InlineData("0 x 1 l")]
    [InlineData("3 x 900 l")]
    [InlineData("2 x 1 l, 3 x 1000 ml")]
    [InlineData("-4 x 1 l")]
    public void ReadVessels_WhatCannotBe_IsRefusedWithAnExample(string typed)
    {
        var reader = new FieldReader();
        Assert.Empty(reader.ReadVessels("vessels", typed));
        Assert.Contains("12 x 1 qt, 2 x 5 l", Assert.Single(reader.Refusals).ToEnter(), StringComparison.Ordinal);
    }
}
