using System.Text;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Recipes;

public class RecipeFileTests
{
    private const string Good = """
        {
          "format": "fermentwatch-recipe/1", "name": "Number nine's kraut",
          "vegetables": [{ "name": "cabbage", "grams": 900 }, { "name": "carrot", "grams": 100, "note": "grated" }],
          "seasonings": [{ "name": "caraway", "grams": 3 }],
          "water_grams": 0, "vinegar_grams": 60, "vinegar_percent": 6, "starter_brine_grams": 50,
          "salt_percent": 2.25, "salt_of": "VegetablesAndWater", "sourness": "Sour", "cut": "Shredded",
          "allergens": ["mustard"], "note": "Two lines.\nOf text."
        }
        """;

    [Fact]
    public void Read_WhatWasWritten_IsTheSame()
    {
        (string name, Mixture? mixture, IReadOnlyList<Refusal> refusals) = Read(Good);
        Assert.Empty(refusals);
        Assert.Equal("Number nine's kraut", name);
        Assert.Equal([new MixturePart("cabbage", 900), new MixturePart("carrot", 100, "grated")], mixture!.Vegetables);
        Assert.Equal((2.25, SaltBasis.VegetablesAndWater, Sourness.Sour, Cut.Shredded), (mixture.SaltPercent, mixture.SaltOf, mixture.Sourness,
            mixture.Cut));
        Assert.Equal((60, 6, 50), (mixture.VinegarGrams, mixture.VinegarPercent, mixture.StarterGrams));
        (string again, Mixture? same, _) = RecipeFile.Read(RecipeFile.Write(name, mixture));
        Assert.Equal((name, Encoding.UTF8.GetString(RecipeFile.Write(name, mixture))), (again, Encoding.UTF8.GetString(RecipeFile.Write(again,
            same!))));
    }

    [Fact]
    public void Read_Shares_AreGramsOfAKilogram()
    {
        (_, Mixture? mixture, IReadOnlyList<Refusal> refusals) = Read("""
            {"format": "fermentwatch-recipe/1", "name": "dill cucumbers", "vegetables": [{"name": "cucumber", "share_percent": 60}],
             "water_share_percent": 40, "salt_percent": 6, "salt_of": "Brine"}
            """);
        Assert.Empty(refusals);
        Assert.Equal((600, 400), (mixture!.Vegetables[0].Grams, mixture.WaterGrams));
        Assert.Equal(Cut.Whole, mixture.Cut);
        // 6 % of the brine are 25.5 g in 400 g of water, 2.55 % of all.
        Assert.Equal(2.553, mixture.Salt.Percent, 3);
    }

    [Fact]
    public void Read_SharesWithLiquids_MakeAHundredWithThem()
    {
        (_, Mixture? mixture, IReadOnlyList<Refusal> refusals) = Read("""
            {"format": "fermentwatch-recipe/1", "name": "dill cucumbers", "vegetables": [{"name": "cucumber", "share_percent": 60}],
             "water_share_percent": 30, "vinegar_share_percent": 4, "starter_brine_share_percent": 6, "salt_percent": 3}
            """);
        Assert.Empty(refusals);
        Assert.Equal((300, 40, 5, 60), (mixture!.WaterGrams, mixture.VinegarGrams, mixture.VinegarPercent, mixture.StarterGrams));
        Assert.Equal(27, mixture.Salt.Grams, 9);
    }

    [Theory]
    [InlineData("\"fermentwatch-recipe/1\"", "\"fermentwatch-recipe/2\"", "format", "Enter fermentwatch-recipe/1")]
    [InlineData("\"format\": \"fermentwatch-recipe/1\",", "", "format", "Enter")]
    [InlineData("\"grams\": 900", "\"grams\": \"900\"", "vegetables[0].grams", "\"900\" cannot be used")]
    [InlineData("\"grams\": 900", "\"grams\": -900", "vegetables[0].grams", "-900 g cannot be used")]
    [InlineData("\"grams\": 900", "\"grams\": 1e9", "vegetables[0].grams", "250000 g")]
    [InlineData("\"grams\": 900", "\"grams\": 1e999", "vegetables[0].grams", "1e999 cannot be used")]
    [InlineData("\"grams\": 3 ", "\"grams\": 0 ", "seasonings[0].grams", "0 g cannot be used")]
    [InlineData("\"grams\": 900", "\"share_percent\": 90", "share_percent", "beside masses")]
    [InlineData("\"grams\": 900", "\"grams\": 900, \"share_percent\": 90", "vegetables[0].share_percent", "beside grams")]
    [InlineData("\"grams\": 900", "\"weight\": 900", "vegetables[0].weight", "known here are grams, name, note, share_percent")]
    [InlineData("\"note\": \"Two", "\"script\": 1, \"note\": \"Two", "script", "Leave it out")]
    [InlineData("2.25", "9", "salt_percent", "1.5 to 8 %")]
    [InlineData("2.25", "-1", "salt_percent", "-1 %")]
    [InlineData("2.25", "null", "salt_percent", "null cannot be used")]
    [InlineData("\"VegetablesAndWater\"", "\"Brine\"", "water_grams", "dissolved in")]
    [InlineData("\"VegetablesAndWater\"", "\"3\"", "salt_of", "one of VegetablesAndWater, Vegetables, Brine")]
    [InlineData("\"Shredded\"", "\"minced\"", "cut", "Shredded")]
    [InlineData("\"caraway\"", "\"bacon\"", "seasonings[0].name", "meat needs other rules")]
    [InlineData("\"caraway\"", "\"chilli 5 kg, sugar\"", "seasonings[0].name", "letters and blanks")]
    [InlineData("\"caraway\"", "\"cara\\u202Eway\"", "seasonings[0].name", "not seen")]
    [InlineData("\"caraway\"", "\"\"", "seasonings[0].name", "1 to 40 letters")]
    [InlineData("Number nine's kraut", " ", "name", "1 to 60 letters")]
    [InlineData("\"mustard\"", "7", "allergens[0]", "a text in quotes")]
    [InlineData("[\"mustard\"]", "\"mustard\"", "allergens", "a list in square brackets")]
    [InlineData("\"water_grams\": 0", "\"water_grams\": -5", "water_grams", "0 to 250000 g")]
    [InlineData("\"vinegar_grams\": 60", "\"vinegar_grams\": 25001", "vinegar_grams", "0 to 25000 g")]
    [InlineData("\"vinegar_grams\": 60", "\"vinegar_share_percent\": 6", "share_percent", "beside masses")]
    [InlineData("\"vinegar_percent\": 6", "\"vinegar_percent\": 80", "vinegar_percent", "1 to 25 %")]
    [InlineData("\"starter_brine_grams\": 50", "\"starter_brine_grams\": \"50 g\"", "starter_brine_grams", "a number without quotes")]
    [InlineData("\"name\": \"Number nine's kraut\",", "\"name\": \"a\", \"name\": \"b\",", "file", "each field once")]
    public void Read_OneThingWrong_IsRefusedByItsFieldAndSaysWhatWouldBeRight(string was, string wrong, string field, string says)
    {
        Assert.Contains(was, Good, StringComparison.Ordinal);
        (_, Mixture? mixture, IReadOnlyList<Refusal> refusals) = Read(Good.Replace(was, wrong, StringComparison.Ordinal));
        Assert.Null(mixture);
        Refusal refusal = Assert.Single(refusals, refusal => refusal.Field == field);
        Assert.Contains(says, refusal.ToEnter(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SeveralThingsWrong_AreAllToldAtOnceAndEachOnce()
    {
        string wrong = Good.Replace("\"grams\": 900", "\"grams\": -5", StringComparison.Ordinal).Replace("\"caraway\"", "\"bacon\"",
            StringComparison.Ordinal)
            .Replace("\"Shredded\"", "7", StringComparison.Ordinal).Replace("\"note\": \"Two", "\"extra\": 1, \"note\": \"Two",
                StringComparison.Ordinal);
        Assert.Equal(["cut", "extra", "seasonings[0].name", "vegetables[0].grams"], Read(wrong).Refusals.Select(refusal => refusal.Field).Order());
    }

    /// <summary>One rule of salt for a recipe and for the jar that is put up by it: the same is taken, asked about in the same words, and
    /// refused.</summary>
    [Theory]
    [InlineData("cabbage", 0.9, "Only 0.9 % of salt? Below 1.5 %")]
    [InlineData("cabbage", 1.5, "Only 1.5 % of salt? 2 to 3 % is published for kraut: FDA CPG 585.750; 7 CFR 52.3451; at 1.7 % or less it goes soft")]
    [InlineData("cabbage", 2, null)]
    [InlineData("napa", 1.9, "Only 1.9 % of salt? 2 to 5 % is published for kimchi")]
    [InlineData("carrot", 1.49, "Only 1.49 % of salt? Below 1.5 %")]
    [InlineData("carrot", 1.5, null)]
    [InlineData("carrot", 6, null)]
    [InlineData("carrot", 6.1, "6.1 % salt is a lot")]
    [InlineData("carrot", 8, "8 % salt is a lot")]
    [InlineData("carrot", 8.1, "refused")]
    public void Salt_OfARecipeAndOfTheJarPutUpByIt_IsAskedAboutAlike(string vegetable, double percent, string? asked)
    {
        Mixture mixture = new()
        {
            Vegetables = [new MixturePart(vegetable, 800)], Seasonings = [], SaltPercent = percent,
            Sourness = Sourness.ALittleSour, Cut = Cut.Shredded,
        };
        PutUpForm form = new ScaledRecipe(mixture, 1, 1).AsPutUp("x", MassUnit.Kilogram) with { Place = "Counter" };
        PutUpOrder order = PutUp.Read(form, Make.Household(), [Make.Counter], Make.Packed);
        if (asked == "refused")
        {
            Assert.Equal(("salt_percent", "salt"), (MixtureRules.Check("x", mixture).Single().Field, order.Refusals.Single().Field));
            return;
        }
        Assert.Empty(MixtureRules.Check("x", mixture));
        Assert.Empty(order.Refusals);
        Assert.Equal(MixtureRules.Odd(mixture), order.Doubts.SingleOrDefault());
        Assert.StartsWith(asked ?? "nothing", MixtureRules.Odd(mixture)?.Question ?? "nothing", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("\"a recipe\"")]
    [InlineData("{\"format\": ")]
    [InlineData("[[[[[[[[[[]]]]]]]]]]")]
    [InlineData("{\"format\": \"fermentwatch-recipe/1\", /* a word */ \"name\": \"x\"}")]
    public void Read_NoRecipeAtAll_IsRefusedAsAFile(string file) =>
        Assert.Equal("file", Assert.Single(Read(file).Refusals).Field);

    [Fact]
    public void Read_MoreThanAPersonWrites_IsRefusedUnread()
    {
        (_, Mixture? mixture, IReadOnlyList<Refusal> refusals) = RecipeFile.Read(new byte[RecipeFile.LongestBytes + 1]);
        Assert.Null(mixture);
        Assert.Contains("at most 64 KB", Assert.Single(refusals).ToEnter(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_TooManyParts_IsRefused()
    {
        string many = string.Join(", ", Enumerable.Repeat("{ \"name\": \"caraway\", \"grams\": 3 }", 21));
        Assert.Equal("seasonings", Assert.Single(Read(Good.Replace("{ \"name\": \"caraway\", \"grams\": 3 }", many,
            StringComparison.Ordinal)).Refusals).Field);
    }

    [Fact]
    public void Write_TextWithMarkup_IsInertAndComesBackAsItWas()
    {
        Mixture mixture = Read(Good).Mixture! with { Note = "<script>alert(1)</script> \"}] & =1+1" };
        byte[] file = RecipeFile.Write("x", mixture);
        Assert.DoesNotContain("<", Encoding.UTF8.GetString(file), StringComparison.Ordinal);
        Assert.Equal(mixture.Note, RecipeFile.Read(file).Mixture!.Note);
    }

    [Fact]
    public void ToBeMadeKnown_WhatWasWrittenAndWhatNamesTell_IsEachOnce()
    {
        Mixture mixture = Read(Good).Mixture! with { Seasonings = [new MixturePart("mustard seed", 3), new MixturePart("celery", 10)] };
        Assert.Equal(["mustard", "celery"], mixture.ToBeMadeKnown);
    }

    private static (string Name, Mixture? Mixture, IReadOnlyList<Refusal> Refusals) Read(string file) =>
        RecipeFile.Read(Encoding.UTF8.GetBytes(file));
}
