using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.PuttingUp;

/// <summary>Inputs as people write them, and what is answered: one table.</summary>
public class InputsAndAnswersTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 11, 28, 12, 0);
    private static readonly PutUpForm Good = new() { What = "cabbage", HowMuch = "800 g", Salt = "2.25 %", Vessel = "1 l", Place = "counter" };

    [Theory]
    [InlineData("2,5 kg", 2.5)]
    [InlineData("2.5 kg", 2.5)]
    [InlineData("0,8", 0.8)]
    [InlineData("0,800 kg", 0.8)]
    [InlineData("500g", 0.5)]
    [InlineData("500 G", 0.5)]
    [InlineData("500 grams", 0.5)]
    [InlineData("1 lb 12 oz", 0.7937866475)]
    [InlineData("1lb 12oz", 0.7937866475)]
    [InlineData("1 lb, 12 oz", 0.7937866475)]
    [InlineData("1 1/2 lb", 0.680388555)]
    [InlineData("1½ lb", 0.680388555)]
    [InlineData("1/2 kg", 0.5)]
    [InlineData("1/2 head", 0.3632)]
    [InlineData("half a head", 0.3632)]
    [InlineData("1,5 heads", 1.0896)]
    [InlineData("1 1/2 large heads", 1.4976)]
    public void HowMuch_AsPeopleWriteIt_IsTaken(string typed, double kilograms)
    {
        PutUpOrder order = Read(Good with { HowMuch = typed, Vessel = "2 l" });
        Assert.Empty(order.Refusals);
        Assert.Equal(kilograms, Read(Good with { HowMuch = typed, Vessel = "2 l", ItIsRight = true }).Jars[0].Portions[0].MassKilograms, 9);
    }

    [Theory]
    [InlineData("2,25", 2.25)]
    [InlineData("2.5 %", 2.5)]
    [InlineData("20 g", 2.5)]
    [InlineData("0,02 kg", 2.5)]
    public void Salt_AsPeopleWriteIt_IsPerCentOfVegetablesAndWater(string typed, double percent) =>
        Assert.Equal(percent, Assert.Single(Read(Good with { Salt = typed }).Jars).Salting.Percent);

    [Theory]
    [InlineData("how much", "", "Enter how much, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz.")]
    [InlineData("how much", "lots",
        "lots cannot be used. Enter a mass from 10 g to 250 kg, or heads of cabbage, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz.")]
    [InlineData("how much", "1,500 g", "1,500 g cannot be used. Enter a mass from 10 g to 250 kg, or heads of cabbage, such as 800 g, 2.3 kg, 5 lb "
        + "or 1 lb 12 oz. Was 1500 g meant, or 1.5 g?")]
    [InlineData("how much", "200 kg", "200.0 kg cannot be used. Into 1 l go about 600 g to 1.33 kg. 200 g?")]
    [InlineData("how much", "5 kg", "5.0 kg cannot be used. Into 1 l go about 600 g to 1.33 kg. 500 g?")]
    [InlineData("salt", "", "Enter salt, such as 2.25 % or 20 g.")]
    [InlineData("salt", "25",
        "25 cannot be used. Enter 1.5 to 8 % of vegetables and water together, its mass, or 'by taste', such as 2.25 % or 20 g. Was 2.5 % meant?")]
    [InlineData("salt", "200 g", "200 g cannot be used. Enter 1.5 to 8 % of vegetables and water together, its mass, or 'by taste', such as 2.25 % "
        + "or 20 g. That is 25 % of 800 g; 2.25 % is 18 g.")]
    [InlineData("vessel", "", "Enter vessel, such as 1 l, 750 ml, 1 qt or 5 gal.")]
    [InlineData("packed on", "2020-01-01", "2020-01-01 cannot be used. Enter a day from 27 November 2025 to today, 28 November 2026.")]
    [InlineData("place", "attic", "attic cannot be used. Choose one of Counter, Cellar.")]
    public void Wrong_IsAnsweredWithWhatToEnter(string field, string typed, string answer)
    {
        PutUpOrder order = Read(With(field, typed) with { ItIsRight = true });
        Assert.Empty(order.Jars);
        Assert.Equal(answer, Assert.Single(order.Refusals).ToEnter());
    }

    [Theory]
    [InlineData("how much", "2 kg", "2.0 kg in one vessel of 1 l? Into 1 l go about 600 g to 1.33 kg. 200 g?")]
    [InlineData("how much", "1,6 kg", "1.6 kg in one vessel of 1 l? Into 1 l go about 600 g to 1.33 kg.")]
    [InlineData("how much", "60 g", "Only 60 g in 1 l? Into 1 l go about 600 g to 1.33 kg. 600 g?")]
    [InlineData("what", "cucumber", "Whole cucumber gives no brine of its own: how much salt water went in? Such as 400 g.")]
    [InlineData("salt", "7 %", "7 % salt is a lot: of vegetables and water together 2 to 3.5 % is usual. Is it that of the brine alone?")]
    [InlineData("packed on", "2025-12-24", "Packed on 24 December 2025, 339 days ago?")]
    [InlineData("packed on", "2026-02-28", "Packed on 28 February 2026, 273 days ago?")]
    public void Odd_IsAskedAboutOnceAndTakenWhenInsistedOn(string field, string typed, string question)
    {
        PutUpForm form = With(field, typed);
        PutUpOrder asked = Read(form);
        Assert.Empty(asked.Jars);
        Assert.Empty(asked.Refusals);
        Assert.Equal((field == "what" ? "added water" : field, question), (Assert.Single(asked.Doubts).Field, asked.Doubts[0].Question));
        Assert.Single(Read(form with { ItIsRight = true }).Jars);
    }

    [Fact]
    public void PackedInTheLastYearThatWasProbablyMeant_IsNamed() =>
        Assert.Equal("Packed on 20 November 2025, 373 days ago? Was 20 November 2026 meant?",
            Plausibility.Odd(Make.Jar(1, packedAt: Instant.FromUtc(2025, 11, 20, 12, 0)), MassUnit.Kilogram, Now, DateTimeZone.Utc)
                .Single().Question);

    [Fact]
    public void WholeCucumbersWithWater_AreNotAskedAbout() =>
        Assert.Single(Read(Good with { What = "cucumber", HowMuch = "500 g", AddedWater = "400 g", Target = "" }).Jars);

    private static PutUpForm With(string field, string typed) => field switch
    {
        "how much" => Good with { HowMuch = typed },
        "salt" => Good with { Salt = typed },
        "vessel" => Good with { Vessel = typed },
        "packed on" => Good with { PackedAt = typed },
        "what" => Good with { What = typed },
        _ => Good with { Place = typed },
    };

    private static PutUpOrder Read(PutUpForm form) => PutUp.Read(form, Make.Household(), [Make.Counter, Make.Cellar], Now);
}
