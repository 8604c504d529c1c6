using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Words;

namespace FermentWatch.Kitchen.Tests.Words;

public class MeasureWordsTests
{
    [Theory]
    [InlineData(18.44, TemperatureUnit.Celsius, "18.4 °C")]
    [InlineData(-2, TemperatureUnit.Celsius, "-2 °C")]
    [InlineData(18.3, TemperatureUnit.Fahrenheit, "65 °F")]
    public void Temperature_ByUnit_IsRoundedAsPeopleReadIt(double celsius, TemperatureUnit unit, string expected) =>
        Assert.Equal(expected, MeasureWords.Temperature(celsius, unit));

    [Theory]
    [InlineData(2.3, MassUnit.Kilogram, "2.3 kg")]
    [InlineData(0.02, MassUnit.Kilogram, "20 g")]
    [InlineData(2.26796, MassUnit.Pound, "5.0 lb")]
    [InlineData(0.1134, MassUnit.Pound, "4 oz")]
    public void Mass_ByUnit_UsesTheSmallerUnitBelowOne(double kilograms, MassUnit unit, string expected) =>
        Assert.Equal(expected, MeasureWords.Mass(kilograms, unit));

    [Theory]
    [InlineData(0.946353, MassUnit.Pound, "1 qt")]
    [InlineData(1.5, MassUnit.Kilogram, "1.5 l")]
    public void Volume_ByUnit_IsInLitresOrQuarts(double litres, MassUnit unit, string expected) =>
        Assert.Equal(expected, MeasureWords.Volume(litres, unit));
}
