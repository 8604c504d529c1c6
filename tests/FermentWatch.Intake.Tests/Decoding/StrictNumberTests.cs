using System.Globalization;
using System.Text;
using CsCheck;
using FermentWatch.Intake.Decoding;

namespace FermentWatch.Intake.Tests.Decoding;

public sealed class StrictNumberTests
{
    [Theory]
    [InlineData("0", 0.0)]
    [InlineData("+3", 3.0)]
    [InlineData(".5", 0.5)]
    [InlineData("5.", 5.0)]
    [InlineData("-127.00", -127.0)]
    [InlineData("1E-2", 0.01)]
    [InlineData("\t4.00\n", 4.0)]
    public void Read_Number_GivesItsValue(string text, double expected)
    {
        Assert.Equal(NumberShape.Finite, StrictNumber.Read(Encoding.UTF8.GetBytes(text), out double value));
        Assert.Equal(expected, value);
    }

    [Theory]
    [InlineData("1,000")]
    [InlineData("1 000")]
    [InlineData("(5)")]
    [InlineData("0x10")]
    [InlineData("∞")]
    [InlineData("--1")]
    [InlineData("1e")]
    [InlineData("-")]
    [InlineData("21.5°C")]
    [InlineData("٢١")]
    [InlineData("0.00000000000000000000000000000000000000000000000001")]
    public void Read_AnythingElse_IsNotANumber(string text) =>
        Assert.Equal(NumberShape.NotANumber, StrictNumber.Read(Encoding.UTF8.GetBytes(text), out _));

    [Theory]
    [InlineData("NaN")]
    [InlineData("inf")]
    [InlineData("-INFINITY")]
    [InlineData("null")]
    [InlineData("unavailable")]
    [InlineData(" \r\n")]
    [InlineData("1e400")]
    public void Read_WordsForNoValue_HaveNoValue(string text) =>
        Assert.Equal(NumberShape.NoValue, StrictNumber.Read(Encoding.UTF8.GetBytes(text), out _));

    [Fact]
    public void Read_EveryFiniteDouble_ComesBackTheSame() =>
        Gen.Double.Where(double.IsFinite).Sample(number =>
            StrictNumber.Read(Encoding.UTF8.GetBytes(number.ToString("R", CultureInfo.InvariantCulture)), out double value) == NumberShape.Finite
            && value.Equals(number));
}
