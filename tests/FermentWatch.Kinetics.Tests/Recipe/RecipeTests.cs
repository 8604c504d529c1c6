using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;

namespace FermentWatch.Kinetics.Tests.Recipe;

public class RecipeTests
{
    [Theory]
    [InlineData(225, "salt: 225 % cannot be used. Enter 1.5 to 8 % of vegetables and added water together: with more salt the lactic acid bacteria "
        + "hardly work.")]
    [InlineData(1.2, "salt: 1.2 % cannot be used. Enter 1.5 to 8 % of vegetables and added water together: with less salt the wrong germs keep up "
        + "with the lactic acid bacteria.")]
    public void Check_SaltOutOfRange_SaysFieldWhatCameAndWhatWouldBeRight(double percent, string expected) =>
        Assert.Equal(expected, Assert.Single(JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, percent).Check()).ToString());

    [Fact]
    public void Check_EverythingWrong_SaysEverythingAtOnce()
    {
        var recipe = new JarRecipe
        {
            Shares = [new ProduceShare(Vegetable.Of("carrot"), -1)],
            Cut = (Cut)99,
            Salt = new SaltDose(double.NaN, -1),
            AddedWaterKilograms = -2,
            VesselLitres = 0,
            UnknownKilograms = double.PositiveInfinity,
        };
        Assert.Equal(["mass of carrot", "salt", "spread of the salt", "added water", "vessel", "other ingredients", "cut"], recipe.Check()
            .Select(refusal => refusal.Field));
    }

    [Fact]
    public void Check_MoreThanATwentiethUnknown_IsRefused()
    {
        JarRecipe recipe = JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25) with { UnknownKilograms = 0.06 };
        Assert.Equal("other ingredients", Assert.Single(recipe.Check()).Field);
        Assert.Empty((recipe with { UnknownKilograms = 0.05 }).Check());
    }

    [Theory]
    [InlineData("red cabbage", "red cabbage")]
    [InlineData("  Bok  Choy ", "pak choi")]
    [InlineData("CUCUMBERS", "cucumber")]
    public void TryFind_NameOrAlias_IsFound(string asked, string name)
    {
        Assert.True(Vegetable.TryFind(asked, out Vegetable? vegetable));
        Assert.Equal(name, vegetable.Name);
    }

    [Theory]
    [InlineData("potato")]
    [InlineData("")]
    [InlineData(null)]
    public void TryFind_Unknown_IsNot(string? asked) => Assert.False(Vegetable.TryFind(asked, out _));

    [Theory]
    [InlineData("olive oil", true)]
    [InlineData("Beans", true)]
    [InlineData("ginger", false)]
    [InlineData("broiled", false)]
    [InlineData("raw oysters", true)]
    [InlineData("Anchovies", true)]
    [InlineData("smoked ham", true)]
    [InlineData("sausages", true)]
    [InlineData("tofu", true)]
    [InlineData("peanut butter", true)]
    [InlineData("dried beans", true)]
    [InlineData("black-eyed peas", true)]
    [InlineData("egg yolks", true)]
    [InlineData("cod roe", true)]
    [InlineData("fish sauce", false)]
    [InlineData("fish sauce with oysters", true)]
    [InlineData("salted shrimp", false)]
    [InlineData("raw shrimps", true)]
    [InlineData("green beans", false)]
    [InlineData("runner beans", false)]
    [InlineData("sugar snap peas", false)]
    [InlineData("eggplant", false)]
    [InlineData("butternut squash", false)]
    [InlineData("lamb's lettuce", false)]
    [InlineData("crab apples", false)]
    public void TryFindReason_ThingsThatAreRefused_AreFoundAsWholeWords(string ingredient, bool refused) =>
        Assert.Equal(refused, RefusedIngredient.TryFindReason(ingredient, out _));

    [Theory]
    [InlineData("ph=4.6", TargetKind.Ph, 4.6)]
    [InlineData("acidity=1.5", TargetKind.AcidityPercentLactic, 1.5)]
    [InlineData(" Sourness = 60 ", TargetKind.Sourness, 60)]
    public void TryParse_Target_IsRead(string text, TargetKind kind, double level)
    {
        Assert.True(ForecastTarget.TryParse(text, out ForecastTarget? target, out _));
        Assert.Equal(new ForecastTarget(kind, level), target);
    }

    [Theory]
    [InlineData("ph=15")]
    [InlineData("ph")]
    [InlineData("ph=NaN")]
    [InlineData("sweetness=3")]
    public void TryParse_Nonsense_IsRefused(string text)
    {
        Assert.False(ForecastTarget.TryParse(text, out _, out Refusal? refusal));
        Assert.Equal("until", refusal.Field);
    }
}
