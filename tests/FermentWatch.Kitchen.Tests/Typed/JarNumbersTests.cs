using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Tests.Typed;

public class JarNumbersTests
{
    [Theory]
    [InlineData("3", new[] { 3 })]
    [InlineData("3, 5 to 8", new[] { 3, 5, 6, 7, 8 })]
    [InlineData(" 8 5-7;5 ", new[] { 5, 6, 7, 8 })]
    [InlineData("12–14,", new[] { 12, 13, 14 })]
    public void Read_AsPeopleWriteThem_IsEachOnceInOrder(string typed, int[] numbers) => Assert.Equal(numbers, JarNumbers.Read(typed));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("three")]
    [InlineData("3 and 4")]
    [InlineData("8-5")]
    [InlineData("1-9999")]
    [InlineData("-1")]
    [InlineData("99999999999")]
    [InlineData("\u0663")] // a digit, and none of ours
    public void Read_AnythingElse_IsNothing(string? typed) => Assert.Null(JarNumbers.Read(typed));

    [Fact]
    public void Read_TextLongerThanAnyRow_IsNothing() => Assert.Null(JarNumbers.Read("1" + new string(' ', 100_000) + "x"));
}
