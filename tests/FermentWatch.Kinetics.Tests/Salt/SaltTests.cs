using FermentWatch.Kinetics.Salt;

namespace FermentWatch.Kinetics.Tests.Salt;

public class SaltTests
{
    private const double PoundGrams = 1000 * CustomaryUnits.KilogramsPerPound;

    /// <summary>3 tablespoons in 5 lb of cabbage: 1.82, 2.25, 2.38 or 2.82 % at 13.75, 17.0, 18.0 or 21.3 g a tablespoon.</summary>
    [Theory]
    [InlineData(13.75, 1.82)]
    [InlineData(17.0, 2.25)]
    [InlineData(18.0, 2.38)]
    [InlineData(21.3, 2.82)]
    public void PercentFrom_ThreeTablespoonsInFivePounds_IsAsPublished(double gramsATablespoon, double percent) =>
        Assert.Equal(percent, SaltArithmetic.PercentFrom(3 * gramsATablespoon, 5 * CustomaryUnits.KilogramsPerPound, 0), 2);

    /// <summary>3/4 cup (292 g a cup) in 25 lb of cabbage: 1.93 %.</summary>
    [Fact]
    public void PercentFrom_ThreeQuartersOfACup_IsAsPublished() =>
        Assert.Equal(1.93, SaltArithmetic.PercentFrom(0.75 * 292, 25 * CustomaryUnits.KilogramsPerPound, 0), 2);

    /// <summary>1.5 tablespoons (18 g) in a US quart of water: 2.78 % by mass of brine.</summary>
    [Fact]
    public void BrinePercentByMass_TopUpBrine_IsAsPublished() =>
        Assert.Equal(2.78, SaltArithmetic.BrinePercentByMass(27, CustomaryUnits.MillilitresPerQuart * 0.9982), 2);

    /// <summary>Dill brine, 1/2 cup (146 g) in 8 cups of water and 1/4 cup of vinegar: 6.97 %; with 4 lb of cucumbers 3.73 %.</summary>
    [Fact]
    public void BrinePercentByMass_DillBrine_IsAsPublished()
    {
        double liquid = 8.25 * CustomaryUnits.MillilitresPerCup * 0.9982;
        Assert.Equal(6.97, SaltArithmetic.BrinePercentByMass(146, liquid), 2);
        Assert.Equal(3.73, SaltArithmetic.BrinePercentByMass(146, liquid + (4 * PoundGrams)), 0.006);
    }

    [Fact]
    public void GramsFor_ProduceAndWater_CountsBoth() => Assert.Equal(63, SaltArithmetic.GramsFor(2.3, 0.5, 2.25), 9);

    [Fact]
    public void GramsForBrine_AndBack_IsThePercent() =>
        Assert.Equal(3.5, SaltArithmetic.BrinePercentByMass(SaltArithmetic.GramsForBrine(1000, 3.5), 1000), 9);

    /// <summary>Table salt, USDA SR 02047: 6.0 g a teaspoon.</summary>
    [Fact]
    public void Of_TableSalt_IsThreeTeaspoonsOfSixGrams() =>
        Assert.Equal(6.0, SpoonMeasure.Of(SaltKind.Table).TypicalGrams / SpoonMeasure.TeaspoonsPerTablespoon, 9);

    [Fact]
    public void TablespoonsFor_Range_IsFewestTypicalMost()
    {
        (double fewest, double typical, double most) = SpoonMeasure.Of(SaltKind.CanningOrPickling).TablespoonsFor(54);
        Assert.Equal(54 / 21.3, fewest, 9);
        Assert.Equal(3, typical, 9);
        Assert.Equal(54 / 13.75, most, 9);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-1)]
    public void GramsFor_Nonsense_NamesTheField(double percent) =>
        Assert.Equal("percent", Assert.Throws<ArgumentOutOfRangeException>(() => SaltArithmetic.GramsFor(1, 0, percent)).ParamName);

    [Fact]
    public void CelsiusFromFahrenheit_FixedPoints_AreExact()
    {
        Assert.Equal(0, CustomaryUnits.CelsiusFromFahrenheit(32), 12);
        Assert.Equal(100, CustomaryUnits.CelsiusFromFahrenheit(212), 12);
        Assert.Equal(64, CustomaryUnits.FahrenheitFromCelsius(CustomaryUnits.CelsiusFromFahrenheit(64)), 12);
    }
}
