using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;

namespace FermentWatch.Kinetics.Tests.Salt;

public class BrineHydrometerTests
{
    [Theory]
    [InlineData(BrineScale.SpecificGravity)]
    [InlineData(BrineScale.Salometer)]
    [InlineData(BrineScale.Baume)]
    public void PercentFrom_WhatWasShown_IsThePercentAtAnyTemperature(BrineScale scale)
    {
        foreach (double percent in new[] { 0, 0.5, 3.5, 10, 26 })
            foreach (double celsius in new[] { 0.0, 4, 20, 40 })
                Assert.Equal(percent, BrineHydrometer.PercentFrom(scale,
                    BrineHydrometer.ReadingOf(scale, percent, celsius, 20), celsius, 20), 1e-6);
    }

    [Fact]
    public void ReadingOf_WarmBrine_IsLessThanOfCold() =>
        Assert.True(BrineHydrometer.ReadingOf(BrineScale.Salometer, 5, 30, 15) < BrineHydrometer.ReadingOf(BrineScale.Salometer, 5, 5, 15) - 1);

    [Fact]
    public void ReadingOf_Water_IsTheZeroOfEachScale()
    {
        Assert.Equal(1, BrineHydrometer.ReadingOf(BrineScale.SpecificGravity, 0, 20, 20), 9);
        Assert.Equal(0, BrineHydrometer.ReadingOf(BrineScale.Salometer, 0, 15, 15), 6);
        Assert.Equal(0, BrineHydrometer.ReadingOf(BrineScale.Baume, 0, 15, 15), 9);
    }

    [Fact]
    public void HighestReading_Salometer_IsAHundred() =>
        Assert.Equal(100, BrineHydrometer.HighestReading(BrineScale.Salometer, BrineHydrometer.SixtyFahrenheit), 6);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-1)]
    [InlineData(41)]
    public void ReadingOf_TemperatureOutOfRange_IsNamed(double celsius) =>
        Assert.Equal("celsius", Assert.Throws<ArgumentOutOfRangeException>(() =>
            BrineHydrometer.ReadingOf(BrineScale.Baume, 5, celsius, 20)).ParamName);

    /// <summary>ln 20 over the rates of PARAMETERS.md: shreds 0.4 an hour, whole vegetables 0.01315.</summary>
    [Fact]
    public void HoursUntilEven_ShredsAndWhole_AreNineteenPartsInTwenty()
    {
        Assert.Equal(7.49, SaltEvening.HoursUntilEven(Cut.Shredded), 2);
        Assert.Equal(227.8, SaltEvening.HoursUntilEven(Cut.Whole), 1);
    }
}
