using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Salts;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Salts;

public class BrineShownTests
{
    /// <summary>1026.8 kg/m3 at 20 C are 4 % (Poradnik fizykochemiczny 1974); 1.0286 times water of 998.2.</summary>
    [Fact]
    public void For_SpecificGravity_IsThePublishedPercent()
    {
        BrineShown brine = Brine(new BrineForm { Reading = "1.0286" });
        Assert.Equal(4, brine.Percent, 0.02);
        Assert.Equal(41.07, brine.GramsPerLitre, 0.25);
        Assert.Equal(41.6, brine.GramsInALitreOfWater, 0.25);
    }

    [Fact]
    public void For_DegreesSalometerAtSixtyFahrenheit_AreAsManyPartsOfSaturation() =>
        Assert.Equal(5.279, Brine(new BrineForm { Scale = "salometer", Reading = "20", Temperature = "60 F" }).Percent, 0.001);

    /// <summary>Warm brine is thinner: the same reading in brine of 30 °C means more salt.</summary>
    [Fact]
    public void For_WarmBrine_HoldsMoreSaltThanItShows() =>
        Assert.InRange(Brine(new BrineForm { Scale = "salometer", Reading = "20", Temperature = "30" }).Percent, 5.6, 6.2);

    [Fact]
    public void For_PercentThatIsWanted_TellsEveryScale()
    {
        BrineShown brine = Brine(new BrineForm { Percent = "5.279", Temperature = "60F" });
        Assert.False(brine.WasRead);
        Assert.Equal(20, brine.Shown.Single(each => each.Scale == BrineScale.Salometer).Reading, 0.001);
        Assert.Equal(5.3, brine.Shown.Single(each => each.Scale == BrineScale.Baume).Reading, 0.05);
    }

    [Theory]
    [InlineData(null, null, null, "reading")]
    [InlineData("1.03", null, "3", "reading")]
    [InlineData("3", null, null, "reading")]
    [InlineData("0.99", null, null, "reading")]
    [InlineData("NaN", null, null, "reading")]
    [InlineData("1.03", "99 C", null, "temperature")]
    [InlineData(null, null, "27", "percent")]
    public void For_WhatCannotBe_NamesTheField(string? reading, string? temperature, string? percent, string field)
    {
        (BrineShown? brine, IReadOnlyList<Refusal> refusals) =
            BrineShown.For(new BrineForm { Reading = reading, Temperature = temperature, Percent = percent }, Make.Household());
        Assert.Null(brine);
        Assert.Equal(field, Assert.Single(refusals).Field);
    }

    private static BrineShown Brine(BrineForm form)
    {
        (BrineShown? brine, IReadOnlyList<Refusal> refusals) = BrineShown.For(form, Make.Household());
        Assert.Empty(refusals);
        return brine!;
    }
}
