using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Service.Tests.CommandLine;

public class OutlookRefusalTests
{
    private static readonly string[] Right = ["outlook", "--produce", "cabbage=1kg", "--salt", "2.25%", "--temperature", "18C"];

    [Theory]
    [InlineData("--reading", "3=15:meter", "reading: 3=15:meter cannot be used. Enter DAY=PH:METHOD with a day from 0 to 366, a pH from 2 to 8 and "
        + "meter, probe or strip, such as 3=4.2:meter.")]
    [InlineData("--reading", "3=4.2", "reading: 3=4.2 cannot be used. Enter DAY=PH:METHOD with a day from 0 to 366, a pH from 2 to 8 and meter, "
        + "probe or strip, such as 3=4.2:meter.")]
    [InlineData("--reading", "3=4.2:tongue", "reading: 3=4.2:tongue cannot be used. Enter DAY=PH:METHOD with a day from 0 to 366, a pH from 2 to 8 "
        + "and meter, probe or strip, such as 3=4.2:meter.")]
    [InlineData("--reading", "-1=4.2:meter", "reading: -1=4.2:meter cannot be used. Enter DAY=PH:METHOD with a day from 0 to 366, a pH from 2 to 8 "
        + "and meter, probe or strip, such as 3=4.2:meter.")]
    [InlineData("--days", "400", "days: 400 cannot be used. Enter a quarter of an hour (0.0104) to 366 days, such as 30, 2.5d or 12h.")]
    [InlineData("--days", "NaN", "days: NaN cannot be used. Enter a quarter of an hour (0.0104) to 366 days, such as 30, 2.5d or 12h.")]
    [InlineData("--every", "0", "every: 0 cannot be used. Enter a quarter of an hour (0.0104) to 366 days, such as 30, 2.5d or 12h.")]
    [InlineData("--members", "3", "members: 3 cannot be used. Enter a whole number from 16 to 65536.")]
    [InlineData("--seed", "x", "seed: x cannot be used. Enter a whole number from 0 to 2147483647.")]
    [InlineData("--until", "ph=9", "until: ph=9 cannot be used. Enter ph between 2.5 and 7.")]
    [InlineData("--until", "sweet", "until: 'sweet' cannot be used. Enter ph=4.6, ph=4.0, acidity=1.5 or sourness=60.")]
    [InlineData("--move", "3", "move: 3 cannot be used. Enter DAY=TEMPERATURE with a day from 0 to 366, each once, and -5 to 45 C, such as 10=18C.")]
    [InlineData("--cut", "fine", "cut: fine cannot be used. Choose one of Shredded, SaltedLeaves, Sliced, Pieces, Whole.")]
    [InlineData("--produce", "seaweed=1kg", "produce: seaweed=1kg cannot be used. Choose one of {known}.", "--produce", "carrot=1kg")]
    [InlineData("--seasonings", "60g",
        "other ingredients: 0.06 kg cannot be used. Enter at most a twentieth of the vegetables, 0.05 kg: the model has no figures for them.")]
    [InlineData("--starter", "100g", "starter: 100g cannot be used. Enter a mass and its acid, 0 to 4 %, such as 100g=0.9%.")]
    [InlineData("--packed", "2026-10-05",
        "packed: 2026-10-05 cannot be used. It says on which day a file's times begin: give --temperatures FILE.csv too, or leave it out.")]
    public async Task Outlook_ImpossibleValue_ExitsTwoAndSaysWhatWouldBeRight(string option, string value, string line, params string[] more)
    {
        Call call = await Call.Of([.. Right, option, value, .. more]);
        Assert.Equal((2, ""), (call.ExitCode, call.Output));
        Assert.Contains(line.Replace("{known}", string.Join(", ", Vegetable.All), StringComparison.Ordinal), call.ErrorLines);
    }

    [Fact]
    public async Task Outlook_SeveralThingsWrong_SaysAllOfThemAtOnce()
    {
        Call call = await Call.Of("outlook", "--produce", "cabbage=-2kg", "--salt", "225%", "--temperature", "180C", "--water", "-3");
        Assert.Equal(2, call.ExitCode);
        Assert.Equal(
            """
            produce: cabbage=-2kg cannot be used. Enter a mass above 0 and at most 250 kg, such as cabbage=2kg.
            water: -3 cannot be used. Enter 0 to 250 kg, such as 500g or 1 l, 750 ml, 1 qt or 5 gal.
            temperature: 180C cannot be used. Enter -5 to 45 C, such as 18C or 64F.
            salt: 225 % cannot be used. Enter 1.5 to 8 % of vegetables and added water together: with more salt the lactic acid bacteria hardly work.

            """, call.Error);
    }

    [Fact]
    public async Task Outlook_Nothing_SaysWhatIsNeeded()
    {
        Call call = await Call.Of("outlook");
        Assert.Equal(
            """
            produce: Enter produce, such as --produce cabbage or --produce cabbage=2kg.
            salt: Enter salt, such as 2.25%, or 'by taste'.
            temperature: Enter either --temperature 18C or --temperatures FILE.csv.

            """, call.Error);
    }

    [Theory]
    [InlineData("mushrooms", "Leave it out: mushrooms sour slowly and come with soil")]
    [InlineData("olive oil", "Leave it out: oil on top keeps air out and is no seal; it favours germs that need no air")]
    public async Task Outlook_RefusedIngredient_SaysTheReason(string ingredient, string reason)
    {
        Call call = await Call.Of("outlook", "--produce", ingredient, "--salt", "2.25%", "--temperature", "18C");
        Assert.Equal(2, call.ExitCode);
        Assert.Equal($"produce: {ingredient} cannot be used. {reason}.", Assert.Single(call.ErrorLines));
    }

    [Fact]
    public async Task Outlook_TwoVegetablesWithoutMass_AsksForTheMass()
    {
        Call call = await Call.Of("outlook", "--produce", "cabbage", "--produce", "carrot=200g", "--salt", "2.25%", "--temperature", "18C");
        Assert.Equal("produce: cabbage cannot be used. Enter a mass above 0 and at most 250 kg, such as cabbage=2kg.",
            Assert.Single(call.ErrorLines));
    }
}
