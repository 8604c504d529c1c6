using FermentWatch.Kitchen.Rounds;

namespace FermentWatch.Kitchen.Tests.Rounds;

public class NumberListTests
{
    [Theory]
    [InlineData("", new int[0])]
    [InlineData("4", new[] { 4 })]
    [InlineData("4, 5", new[] { 5, 4 })]
    [InlineData("4 to 6", new[] { 4, 5, 6 })]
    [InlineData("1, 4 to 6, 9", new[] { 9, 4, 6, 5, 1, 1 })]
    public void Say_DrawsRunsTogether(string expected, int[] numbers) => Assert.Equal(expected, NumberList.Say(numbers));
}
