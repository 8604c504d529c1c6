using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.PuttingUp;

public class PutUpTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 12, 0);
    private static readonly PutUpForm Good = new() { What = "cabbage", HowMuch = "800g", Salt = "2.25%", Vessel = "1l", Place = "counter", Target = "sour", HowMany = "2" };

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
    [InlineData("salt", "225%", "1.5 to 8 % of vegetables and water together, its mass, or 'by taste', would be right, such as 2.25 % or 20 g. Was 2.25 % meant?")]
    [InlineData("salt", "1%", "1.5 to 8 % of vegetables and water together, its mass, or 'by taste', would be right, such as 2.25 % or 20 g")]
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
    }

    [Fact]
    public void Read_EverythingWrong_IsSaidAtOnce() =>
        Assert.Equal(["how many", "how much", "place", "salt", "vessel", "what"],
            Read(new PutUpForm { What = "x", HowMuch = "x", Salt = "x", Vessel = "x", Place = "x", HowMany = "x" }).Refusals.Select(refusal => refusal.Field).Order());

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
