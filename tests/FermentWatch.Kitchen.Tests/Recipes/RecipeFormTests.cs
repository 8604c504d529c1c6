using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Recipes;

public class RecipeFormTests
{
    private static readonly RecipeForm Kraut = new()
    {
        Name = "garden kraut", Vegetables = "cabbage 900 g\ncarrot 0.1 kg (grated)", Seasonings = "caraway 3g (crushed)", Salt = "2.25",
    };

    [Fact]
    public void Read_AsItIsTyped_IsTheMixture()
    {
        Mixture mixture = Of(Kraut);
        Assert.Equal([new MixturePart("cabbage", 900), new MixturePart("carrot", 100, "grated")], mixture.Vegetables);
        Assert.Equal([new MixturePart("caraway", 3, "crushed")], mixture.Seasonings);
        Assert.Equal((Cut.Shredded, Sourness.Sour), (mixture.Cut, mixture.Sourness));
        Assert.Equal(1003 * 0.0225, mixture.Salt.Grams, 9);
    }

    [Fact]
    public void Of_AMixture_ReadsBackTheSameInEitherUnit()
    {
        Mixture mixture = Of(Kraut) with
        {
            WaterGrams = 250, VinegarGrams = 60, VinegarPercent = 6, StarterGrams = 50, Note = "a note", Allergens = ["celery"],
        };
        Mixture again = Of(RecipeForm.Of("garden kraut", mixture, MassUnit.Kilogram));
        Assert.Equal(RecipeFile.Write("x", mixture), RecipeFile.Write("x", again));
        (_, Mixture? pounds, _) = RecipeReading.Read(RecipeForm.Of("garden kraut", mixture, MassUnit.Pound), MassUnit.Pound);
        Assert.Equal(900, pounds!.Vegetables[0].Grams, 0.2);
    }

    [Theory]
    [InlineData("cabbage", "vegetables")]
    [InlineData("900 g", "vegetables")]
    [InlineData("cabbage 0 g", "vegetables")]
    [InlineData("cabbage some", "vegetables")]
    [InlineData("", "vegetables")]
    [InlineData("cabbage 90 %", "vegetables")]
    [InlineData("beef 900 g", "vegetables")]
    public void Read_VegetablesThatCannotBe_AreRefused(string typed, string field)
    {
        (_, Mixture? mixture, IReadOnlyList<Refusal> refusals) = RecipeReading.Read(Kraut with { Vegetables = typed }, MassUnit.Kilogram);
        Assert.Null(mixture);
        Assert.Contains(refusals, refusal => refusal.Field == field);
    }

    [Theory]
    [InlineData("8.1 %")]
    [InlineData("")]
    [InlineData("by taste")]
    [InlineData("30 %")]
    public void Read_SaltThatCannotBe_IsRefused(string salt) =>
        Assert.Contains(RecipeReading.Read(Kraut with { Salt = salt }, MassUnit.Kilogram).Refusals, refusal => refusal.Field == "salt");

    [Fact]
    public void Of_AJar_HasWhatWentIn()
    {
        Jar jar = Make.Jar(7);
        (jar.Portions, jar.Starter, jar.Vinegar) = ([new Portion("cabbage", 0.8), new Portion("ginger", 0.02), new Portion("pepper corns", 0.002)],
            new Starter(3, 0.05, 1.2), new Vinegar(0.06, 6));
        RecipeForm form = RecipeForm.Of(jar, MassUnit.Kilogram);
        Assert.Equal(("cabbage 800 g", "ginger 20 g\npepper corns 2 g"), (form.Vegetables, form.Seasonings));
        Assert.Equal(("60 g", "6 %", "50 g"), (form.Vinegar, form.VinegarStrength, form.StarterBrine));
        Assert.Equal((822, 932), (Of(form).SaltedGrams, Of(form).TotalGrams));
    }

    /// <summary>Liquids take room in the vessel as all else does; the salt is of vegetables and added water alone.</summary>
    [Fact]
    public void VinegarAndBrine_AreScaledAndCarriedToThePutUpForm()
    {
        Mixture mixture = Of(Kraut with { Seasonings = "", Vinegar = "0.06 kg", VinegarStrength = "6", StarterBrine = "50 g" });
        Assert.Equal((60, 6, 50), (mixture.VinegarGrams, mixture.VinegarPercent, mixture.StarterGrams));
        ScaledRecipe scaled = ScaledRecipe.For(mixture, new ScaleForm { Mass = "4.44 kg", Jars = "2" }, MassUnit.Kilogram).Scaled!;
        PutUpForm form = scaled.AsPutUp("x", MassUnit.Kilogram);
        Assert.Equal(("120 g", "6 %", "100 g", "2.25 %"), (form.Vinegar, form.VinegarStrength, form.StarterBrine, form.Salt));
        Assert.Equal(45, scaled.Each.Salt.Grams, 6);
    }

    [Theory]
    [InlineData("vinegar", "lots", "vinegar")]
    [InlineData("vinegar", "26 kg", "vinegar")]
    [InlineData("vinegar", "10 %", "vegetables")]
    [InlineData("vinegar strength", "30 %", "vinegar strength")]
    [InlineData("starter brine", "-1 g", "starter brine")]
    [InlineData("starter brine", "26 kg", "starter brine")]
    public void Read_LiquidsThatCannotBe_AreRefusedByTheirField(string typed, string amount, string field)
    {
        RecipeForm form = typed switch
        {
            "vinegar" => Kraut with { Vinegar = amount },
            "starter brine" => Kraut with { StarterBrine = amount },
            _ => Kraut with { Vinegar = "60 g", VinegarStrength = amount },
        };
        Assert.Equal(field, Assert.Single(RecipeReading.Read(form, MassUnit.Kilogram).Refusals).Field);
    }

    [Theory]
    [InlineData("2 kg", null, null, 1, 2000)]
    [InlineData("2 kg", "4", null, 4, 500)]
    [InlineData("2 kg", null, "1 l", 3, 2000 / 3.0)]
    [InlineData(null, "4", "1 l", 4, 850)]
    [InlineData(null, null, "5 l", 1, 3000)]
    [InlineData(null, "2", null, 2, 850)]
    [InlineData(null, null, null, 1, 1003)]
    public void For_MassJarsOrVessel_SharesOut(string? mass, string? jars, string? vessel, int count, double eachGrams)
    {
        (ScaledRecipe? scaled, IReadOnlyList<Refusal> refusals) =
            ScaledRecipe.For(Of(Kraut), new ScaleForm { Mass = mass, Jars = jars, Vessel = vessel }, MassUnit.Kilogram);
        Assert.Empty(refusals);
        Assert.Equal(count, scaled!.Count);
        Assert.Equal(eachGrams, scaled.Each.TotalGrams, 6);
        Assert.Equal(900 / 1003.0, scaled.Each.Vegetables[0].Grams / scaled.Each.TotalGrams, 9);
        Assert.Equal(0.0225 * eachGrams, scaled.Each.Salt.Grams, 6);
    }

    [Theory]
    [InlineData("900 kg", null, "1 l", "mass")]
    [InlineData("lots", null, null, "mass")]
    [InlineData(null, "101", null, "jars")]
    [InlineData(null, "-1", null, "jars")]
    [InlineData(null, null, "900 l", "vessel")]
    public void For_WhatCannotBe_NamesTheField(string? mass, string? jars, string? vessel, string field) =>
        Assert.Equal(field, Assert.Single(ScaledRecipe.For(Of(Kraut), new ScaleForm { Mass = mass, Jars = jars, Vessel = vessel },
            MassUnit.Kilogram).Refusals).Field);

    /// <summary>What a recipe fills the put-up form with is taken as it is.</summary>
    [Theory]
    [InlineData(MassUnit.Kilogram)]
    [InlineData(MassUnit.Pound)]
    public void AsPutUp_OfEveryVegetable_IsPutUpWithoutAQuestion(MassUnit unit)
    {
        Household household = Make.Household();
        household.MassUnit = unit;
        foreach (Vegetable vegetable in Vegetable.All)
        {
            RecipeForm form = Kraut with
            {
                Vegetables = $"{vegetable.Name} 90 %\ncarrot 5 % (grated)", Seasonings = "caraway 0.5 %", Water = "4.5 %", Salt = "2.5 %",
            };
            ScaledRecipe scaled = ScaledRecipe.For(Of(form), new ScaleForm { Jars = "3", Vessel = "1 l" }, unit).Scaled!;
            PutUpOrder order = PutUp.Read(scaled.AsPutUp("x", unit) with { Place = "Counter" }, household, [Make.Counter], Make.Packed);
            Assert.Empty(order.Refusals);
            Assert.Empty(order.Doubts);
            Assert.Equal(3, order.Jars.Count);
            Assert.Equal(2.5, order.Jars[0].Salting.Percent!.Value, 6);
            Assert.Equal(scaled.Each.Vegetables[0].Grams, 1000 * order.Jars[0].Portions[0].MassKilograms, 0.01);
        }
    }

    private static Mixture Of(RecipeForm form)
    {
        (_, Mixture? mixture, IReadOnlyList<Refusal> refusals) = RecipeReading.Read(form, MassUnit.Kilogram);
        Assert.Empty(refusals);
        return mixture!;
    }
}
