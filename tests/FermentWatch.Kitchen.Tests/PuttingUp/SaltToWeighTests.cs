using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.PuttingUp;

/// <summary>Worked examples of ../shared/science/salt_measures.csv, by the wording of their publishers.</summary>
public class SaltToWeighTests
{
    private const double PoundKilograms = 0.45359237;

    [Fact]
    public void Of_FivePoundsOfCabbageAtTheKrautRecipe_IsThePublishedThreeTablespoons()
    {
        // Univ. of Minnesota Extension: 3 tablespoons of canning salt in 5 lb of cabbage are 2.25 to 2.5 %.
        var salt = SaltToWeigh.Of(2.25, SaltBasis.Vegetables, 5 * PoundKilograms, 0);
        Assert.Equal(51.03, salt.Grams, 2);
        Assert.Equal(("51 g salt", "about 2 3/4 tablespoons: by the spoon 39 to 60 g"), (salt.Words, salt.Spoons));
    }

    [Fact]
    public void Of_BrineOfAQuart_IsThePublishedOneAndAHalfTablespoons()
    {
        // USDA Complete Guide to Home Canning, Guide 6: 1.5 tablespoons in a US quart of water, 2.78 % by mass at 18 g a tablespoon.
        var salt = SaltToWeigh.Of(2.78, SaltBasis.Brine, 0.6, 0.944);
        Assert.Equal(27.0, salt.Grams, 1);
        Assert.Equal("about 1 1/2 tablespoons: by the spoon 21 to 32 g", salt.Spoons);
    }

    [Theory]
    [InlineData(SaltBasis.VegetablesAndWater, 30.0, 3.0)]
    [InlineData(SaltBasis.Vegetables, 18.0, 1.8)]
    [InlineData(SaltBasis.Brine, 12.371, 1.237)]
    public void Of_ThreePerCent_OfEachBasis_EvensOutToPerCentOfAll(SaltBasis basis, double grams, double ofAll)
    {
        var salt = SaltToWeigh.Of(3, basis, 0.6, 0.4);
        Assert.Equal((grams, ofAll), (Math.Round(salt.Grams, 3), Math.Round(salt.Percent, 3)));
    }

    [Theory]
    [InlineData("cabbage", "1,2 kg", "2.25", "27 g salt")]
    [InlineData("cabbage", "1/2 head", "2.25", "8 g salt")]
    [InlineData("carrot", "1 lb 12 oz", "3", "24 g salt")]
    [InlineData("carrot", "300", "2", "6 kg salt")]
    [InlineData("something else", "200 g", "2", "4 g salt")]
    [InlineData("cabbage", "1 kg", "20 g", "20 g salt")]
    public void Weigh_AsPeopleType_IsWhatThePutUpFormWillTake(string what, string howMuch, string salt, string words)
    {
        (SaltToWeigh? weighed, var refusals) = PutUp.Weigh(new PutUpForm { What = what, HowMuch = howMuch, Salt = salt }, Make.Household("UTC"));
        if (words == "6 kg salt")
            Assert.Equal("how much", Assert.Single(refusals).Field);
        else
            Assert.Equal(words, weighed!.Words);
    }

    [Theory]
    [InlineData("740 g", "704 g", "1", 4.5)]
    [InlineData("740 g", "704 g", "2", 2.25)]
    [InlineData("1.2 kg", "1164 g", "2", 2.25)]
    public void Read_TubWeighedBeforeAndAfter_IsTheSaltOfEachJarWeighed(string before, string after, string howMany, double percent)
    {
        PutUpOrder order = Read(Kraut with { Salt = "by taste", TubBefore = before, TubAfter = after, HowMany = howMany });
        Assert.All(order.Jars, jar => Assert.Equal(new Salting(SaltKnowledge.Weighed, percent), jar.Salting));
        Assert.Equal(howMany, $"{order.Jars.Count}");
    }

    [Theory]
    [InlineData("704 g", "740 g", "tub after", "less than before, 704 g, would be right: salt was taken out")]
    [InlineData("740 g", "740 g", "tub after", "less than before, 740 g, would be right: salt was taken out")]
    [InlineData("740 g", "600 g", "tub after", "a tub that lost up to 64 g would be right. That is 17.5 % of 800 g")]
    [InlineData("740 g", "", "tub after", "what the tub weighed after, up to 50 kg, would be right, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz")]
    [InlineData("lots", "7 g", "tub before", "what the tub weighed before, up to 50 kg, would be right, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz")]
    public void Read_TubThatCannotBe_SaysWhatWouldBeRight(string before, string after, string field, string wouldBeRight)
    {
        Refusal refusal = Assert.Single(Read(Kraut with { Salt = "by taste", TubBefore = before, TubAfter = after }).Refusals);
        Assert.Equal((field, wouldBeRight), (refusal.Field, refusal.WouldBeRight));
    }

    [Fact]
    public void Weigh_Tub_SaysWhatWentIntoEachJar() =>
        Assert.Equal("18 g salt", PutUp.Weigh(Kraut with { Salt = null, TubBefore = "740 g", TubAfter = "704 g", HowMany = "2" },
            Make.Household("UTC")).Salt!.Words);

    private static PutUpForm Kraut => new() { What = "cabbage", HowMuch = "800 g", Vessel = "1l", Place = "counter" };

    [Fact]
    public void Read_PerCentOfTheBrine_IsKeptAsPerCentOfAllAndNeedsTheWater()
    {
        var form = new PutUpForm { What = "cucumber", HowMuch = "600 g", Salt = "5", SaltOf = "brine", Vessel = "1l", Place = "counter" };
        Assert.Contains("how much water it is dissolved in", Assert.Single(Read(form).Refusals).WouldBeRight, StringComparison.Ordinal);
        PutUpOrder order = Read(form with { AddedWater = "400 g", Cut = "Whole" });
        // 400 g of water take 21.05 g for 5 % by mass; of the kilogram together that is 2.11 %.
        Assert.Equal(2.11, Assert.Single(order.Jars).Salting.Percent);
    }

    private static PutUpOrder Read(PutUpForm form) =>
        PutUp.Read(form, Make.Household("UTC"), [Make.Counter], NodaTime.Instant.FromUtc(2026, 10, 4, 12, 0));
}
