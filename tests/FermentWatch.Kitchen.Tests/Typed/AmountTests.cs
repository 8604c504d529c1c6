using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Tests.Typed;

public class AmountTests
{
    [Theory]
    [InlineData("2.3kg", 2.3)]
    [InlineData("2.3 kg", 2.3)]
    [InlineData("800g", 0.8)]
    [InlineData("5lb", 2.26796185)]
    [InlineData("2.3", 2.3)]
    public void MassKilograms_WithAndWithoutUnit(string typed, double kilograms)
    {
        Assert.True(Amount.MassKilograms.TryRead(typed, "kg", out double value));
        Assert.Equal(kilograms, value, 9);
    }

    [Theory]
    [InlineData("18C", 18)]
    [InlineData("64.4F", 18)]
    [InlineData("-5 °C", -5)]
    public void Celsius_FromEitherScale(string typed, double celsius)
    {
        Assert.True(Amount.Celsius.TryRead(typed, null, out double value));
        Assert.Equal(celsius, value, 9);
    }

    [Theory]
    [InlineData("1l", 1)]
    [InlineData("750 ml", 0.75)]
    [InlineData("1qt", 0.946352946)]
    [InlineData("8cups", 1.892705892)]
    [InlineData("3tbsp", 0.044360294)]
    [InlineData("2tsp", 0.009857843)]
    public void VolumeLitres_InEachUnit(string typed, double litres)
    {
        Assert.True(Amount.VolumeLitres.TryRead(typed, null, out double value));
        Assert.Equal(litres, value, 9);
    }

    [Theory]
    [InlineData("30", 30)]
    [InlineData("2.5d", 2.5)]
    [InlineData("12h", 0.5)]
    public void Days_WithAndWithoutUnit(string typed, double days)
    {
        Assert.True(Amount.Days.TryRead(typed, "d", out double value));
        Assert.Equal(days, value, 9);
    }

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("kg")]
    [InlineData("1,500 kg")]
    [InlineData("1 lb 12")]
    [InlineData("1/0 kg")]
    [InlineData("2.3 stone")]
    [InlineData("NaNkg")]
    [InlineData("1e999kg")]
    public void MassKilograms_NotAnAmount_IsRefused(string? typed) =>
        Assert.False(Amount.MassKilograms.TryRead(typed, "kg", out _));

    [Fact]
    public void Celsius_BareNumberWithoutADefault_IsRefused() => Assert.False(Amount.Celsius.TryRead("18", null, out _));
}
