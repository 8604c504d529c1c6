using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Kitchen.Tests.Readings;

public sealed class MeasureUnitTests
{
    [Theory]
    [InlineData("Cel", 21.5, 21.5, Quantity.Temperature)]
    [InlineData("degF", 32, 0, Quantity.Temperature)]
    [InlineData("degF", -40, -40, Quantity.Temperature)]
    [InlineData("degF", 212, 100, Quantity.Temperature)]
    [InlineData("K", 273.15, 0, Quantity.Temperature)]
    [InlineData("pH", 3.6, 3.6, Quantity.Ph)]
    [InlineData("mV", -59.2, -59.2, Quantity.Millivolts)]
    [InlineData("V", 0.0592, 59.2, Quantity.Millivolts)]
    [InlineData("%RH", 61, 61, Quantity.Humidity)]
    public void ToStored_KnownUnit_ConvertsToTheUnitOfItsQuantity(string symbol, double value, double expected, Quantity quantity)
    {
        MeasureUnit unit = MeasureUnit.Find(symbol)!;

        Assert.Equal(quantity, unit.Quantity);
        Assert.Equal(expected, unit.ToStored(value), 1e-12);
    }

    [Theory]
    [InlineData("cel")]
    [InlineData("C")]
    [InlineData("ph")]
    [InlineData("")]
    [InlineData(null)]
    public void Find_OtherSymbol_IsNull(string? symbol) => Assert.Null(MeasureUnit.Find(symbol));

    [Fact]
    public void StoredUnit_EveryQuantity_LeavesValuesAsTheyAre() =>
        Assert.All(MeasuredQuantity.All, entry => Assert.Equal(12.25, entry.StoredUnit.ToStored(12.25)));
}
