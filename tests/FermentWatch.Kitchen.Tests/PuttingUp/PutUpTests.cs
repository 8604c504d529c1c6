using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.PuttingUp;

public class PutUpTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 12, 0);
    private static readonly PutUpForm Good =
        new() { What = "cabbage", HowMuch = "800g", Salt = "2.25%", Vessel = "1l", Place = "counter", Target = "sour", HowMany = "2" };

    [Fact]
    public void Read_SevenFields_MakesJarsAlike()
    {
        PutUpOrder order = Read(Good);
        Assert.Empty(order.Refusals);
        Assert.Equal(2, order.Jars.Count);
        Assert.Single(order.Jars.Select(jar => jar.BatchId).Distinct());
        Jar jar = order.Jars[0];
        Assert.Equal((Now, Cut.Shredded, Cover.Leaf, Lid.Vented, Sourness.Sour), (jar.PackedAt, jar.Cut, jar.Cover, jar.Lid, jar.Target));
        Assert.Equal(new Salting(SaltKnowledge.Weighed, 2.25), jar.Salting);
        Assert.Equal(Make.Counter.Id, Assert.Single(jar.Placements).PlaceId);
    }

    [Fact]
    public void Read_SaltByTaste_IsKnownAsSuch() =>
        Assert.Equal(new Salting(SaltKnowledge.ByTaste, null), Read(Good with { Salt = "by taste" }).Jars[0].Salting);

    [Fact]
    public void Read_Heads_AreWeighedByTheTable() =>
        // USDA SR 11109: a medium head 908 g with 20 % refuse.
        Assert.Equal(2 * 0.908 * 0.8, Read(Good with { HowMuch = "2 heads", Vessel = "2l" }).Jars[0].Portions[0].MassKilograms, 9);

    [Fact]
    public void Read_Seasonings_StandBesideTheVegetable() =>
        Assert.Equal([new Portion("cabbage", 0.8), new Portion("carrot", 0.2), new Portion("ginger", 0.02)],
            Read(Good with { Also = "carrots 200g, ginger 20g" }).Jars[0].Portions);

    [Theory]
    [InlineData("salt", "225%",
        "1.5 to 8 % of vegetables and water together, its mass, or 'by taste', would be right, such as 2.25 % or 20 g. Was 2.25 % meant?")]
    [InlineData("salt", "9%", "1.5 to 8 % of vegetables and water together, its mass, or 'by taste', would be right, such as 2.25 % or 20 g")]
    [InlineData("how much", "-2kg", "a mass from 10 g to 250 kg, or heads of cabbage, would be right, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz")]
    [InlineData("packed on", "2026-10-05", "a day from 3 October 2025 to today, 4 October 2026, would be right")]
    [InlineData("vessel", "none", "0.1 to 250 litres would be right, such as 1 l, 750 ml, 1 qt or 5 gal")]
    [InlineData("how many", "0", "a whole number from 1 to 100 would be right")]
    [InlineData("place", "attic", "one of Counter, Cellar would be right")]
    [InlineData("what", "beans", "a vegetable: beans sour slowly and hold much protein")]
    [InlineData("also in it", "mushrooms 200g", "leave it out: mushrooms sour slowly and come with soil")]
    public void Read_ImpossibleValue_NamesFieldValueAndWhatWouldBeRight(string field, string typed, string wouldBeRight)
    {
        PutUpOrder order = Read(With(field, typed));
        Assert.Empty(order.Jars);
        var refusal = Assert.Single(order.Refusals);
        Assert.Equal(field, refusal.Field);
        Assert.Contains(refusal.Came, typed, StringComparison.Ordinal);
        Assert.Equal(wouldBeRight, refusal.WouldBeRight);
    }

    [Fact]
    public void Read_UnknownVegetable_ListsTheCatalogue()
    {
        var refusal = Assert.Single(Read(Good with { What = "moonroot" }).Refusals);
        Assert.Equal(("what", "moonroot"), (refusal.Field, refusal.Came));
        Assert.StartsWith("one of cabbage, red cabbage, napa, carrot, cucumber, daikon", refusal.WouldBeRight, StringComparison.Ordinal);
        Assert.EndsWith("'something else' with its name", refusal.WouldBeRight, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SomethingElse_IsAJarByItsOwnNameWithoutForecast()
    {
        Jar jar = Assert.Single(Read(Good with { What = "something else", ItsName = "okra", HowMany = "1", AddedWater = "300 g" }).Jars);
        Assert.Equal(("okra", "okra", Cut.Pieces), (jar.Name, jar.Portions[0].Produce, jar.Cut));
        Assert.Equal("Nothing is forecast: nobody has figures for okra here. Rounds, pH and the acid line are as for any jar.", NoForecast.Of(jar));
        Assert.True(AcidLine.IsInPieces(jar));
    }

    [Theory]
    [InlineData("Bok choy", "pak choi")]
    [InlineData("green beans", "green beans")]
    public void Read_SomethingElseThatIsKnown_IsTheVegetableItIs(string typed, string produce) =>
        Assert.Equal(produce,
        Read(Good with { What = "something else", ItsName = typed, Target = "", ItIsRight = true }).Jars[0].Portions[0].Produce);

    [Theory]
    [InlineData("raw oysters", "a vegetable: fish needs other rules than vegetables")]
    [InlineData("dried beans", "a vegetable: beans sour slowly and hold much protein")]
    [InlineData("", "a name")]
    public void Read_SomethingElseThatIsNone_IsRefusedInTheFieldOfItsName(string typed, string wouldBeRight)
    {
        var refusal = Assert.Single(Read(Good with { What = "something else", ItsName = typed }).Refusals);
        Assert.Equal("its name", refusal.Field);
        Assert.StartsWith(wouldBeRight, refusal.WouldBeRight, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SaltBelowOneAndAHalf_IsAskedAboutThenTakenWithoutForecast()
    {
        PutUpForm little = Good with { Salt = "1.2 %", HowMany = "1" };
        Doubt doubt = Assert.Single(Read(little).Doubts);
        Assert.Equal(("salt", true), (doubt.Field, doubt.Question.EndsWith("2.25 % is 18 g.", StringComparison.Ordinal)));
        Jar jar = Assert.Single(Read(little with { ItIsRight = true }).Jars);
        Assert.StartsWith("Nothing is forecast: salted with 1.2 %,", NoForecast.Of(jar), StringComparison.Ordinal);
        Assert.Contains(JarWarnings.Of(jar, null, new ForecastCalendar(Now, 0, Now, DateTimeZone.Utc)), warning =>
            warning.StartsWith("Salted below 1.5 %", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_SaltWithASlippedPoint_IsAskedWhatWasMeant() =>
        Assert.EndsWith("Was 2.25 % meant?", Assert.Single(Read(Good with { Salt = "0.225" }).Doubts).Question, StringComparison.Ordinal);

    [Theory]
    [InlineData("fish sauce 15 g", "Nothing is forecast: fish sauce stands in published kimchi recipes, but nobody has figures for it here.")]
    [InlineData("ginger 60 g", "Nothing is forecast: more than a twentieth of it is ginger, and nobody has figures for that here.")]
    [InlineData("ginger 40 g", null)]
    public void Read_SeasoningsWithoutFigures_AreAJarWithoutForecast(string also, string? why)
    {
        string? said = NoForecast.Of(Read(Good with { What = "napa", Target = "", Also = also }).Jars[0]);
        Assert.Equal(why, said?[..(why?.Length ?? 0)]);
    }

    [Theory]
    [InlineData("60 g", "", 0.06, 5)]
    [InlineData("1/4 cup", "6 %", 0.0590406, 6)]
    public void Read_Vinegar_IsTakenByMassOrVolume(string typed, string strength, double kilograms, double percent)
    {
        Vinegar vinegar = Read(
            Good with { What = "cucumber", AddedWater = "400 g", Target = "", Vinegar = typed, VinegarStrength = strength }).Jars[0].Vinegar!;
        Assert.Equal((kilograms, percent), (Math.Round(vinegar.MassKilograms, 7), vinegar.AceticPercent));
    }

    // end_points and courses as published: brined cucumbers 0.85 to 0.90 %, napa 0.90 to 1.00 %, red cabbage 1.54 +- 0.09 %.
    [Theory]
    [InlineData("cucumber", new[] { Sourness.ALittleSour }, Sourness.ALittleSour)]
    [InlineData("napa", new[] { Sourness.ALittleSour, Sourness.BetweenALittleSourAndSour }, Sourness.BetweenALittleSourAndSour)]
    [InlineData("red cabbage", new[] { Sourness.ALittleSour, Sourness.BetweenALittleSourAndSour, Sourness.Sour, Sourness.BetweenSourAndVerySour },
        Sourness.Sour)]
    [InlineData("cabbage", new[] { Sourness.ALittleSour, Sourness.BetweenALittleSourAndSour, Sourness.Sour, Sourness.BetweenSourAndVerySour,
        Sourness.VerySour }, Sourness.Sour)]
    public void ReachedBy_AVegetable_IsWhatIsPublishedOfIt(string produce, Sourness[] steps, Sourness usual)
    {
        Assert.Equal(steps, SournessLevel.ReachedBy(produce).Select(level => level.Step));
        Assert.Equal(usual, SournessLevel.Usual(produce));
    }

    [Fact]
    public void ReachedBy_AnyVegetable_IsAtLeastTheMildestAndNoStepLeftOut() =>
        Assert.All(Vegetable.All.Select(each => each.Name).Append("okra"), produce =>
        Assert.Equal(SournessLevel.All.Take(SournessLevel.ReachedBy(produce).Count), SournessLevel.ReachedBy(produce)));

    [Fact]
    public void Read_SourerThanTheVegetableGets_IsRefusedWithWhatItReaches()
    {
        PutUpForm pickles = Good with { What = "cucumber", AddedWater = "400 g", Target = "Sour" };
        var refusal = Assert.Single(Read(pickles).Refusals);
        Assert.Equal(("how sour", "sour", "cucumber ends near 0.9 % acid: a little sour"), (refusal.Field, refusal.Came, refusal.WouldBeRight));
        Assert.Equal(Sourness.ALittleSour, Read(pickles with { Target = "" }).Jars[0].Target);
    }

    [Fact]
    public void Read_VinegarThatCannotBe_IsRefused() =>
        Assert.Equal(["vinegar", "vinegar strength"], Read(Good with { Vinegar = "a dash", VinegarStrength = "80 %" }).Refusals.Select(refusal =>
            refusal.Field).Order());

    [Fact]
    public void Read_EverythingWrong_IsSaidAtOnce() =>
        Assert.Equal(["how many", "how much", "place", "salt", "vessel", "what"],
            Read(new PutUpForm { What = "x", HowMuch = "x", Salt = "x", Vessel = "x", Place = "x", HowMany = "x" }).Refusals.Select(refusal =>
                refusal.Field).Order());

    private static PutUpForm With(string field, string typed) => field switch
    {
        "salt" => Good with { Salt = typed },
        "how much" => Good with { HowMuch = typed },
        "packed on" => Good with { PackedAt = typed },
        "vessel" => Good with { Vessel = typed },
        "how many" => Good with { HowMany = typed },
        "place" => Good with { Place = typed },
        "what" => Good with { What = typed },
        _ => Good with { Also = typed },
    };

    private static PutUpOrder Read(PutUpForm form) => PutUp.Read(form, Make.Household(), [Make.Counter, Make.Cellar], Now);
}
