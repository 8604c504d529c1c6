using FermentWatch.Kitchen.Words;

namespace FermentWatch.Kitchen.Tests.Words;

public class InertTextTests
{
    [Theory]
    [InlineData("cellar-shelf", "cellar-shelf")]
    [InlineData("Müßig 7 °C", "Müßig 7 °C")]
    [InlineData("a\r\nb\tc", "a··b·c")]
    [InlineData("\u001b[31mred\u0007", "·[31mred·")]
    [InlineData("x\u202edlo\u200bg\u2028h\u2029", "x·dlo·g·h·")]
    [InlineData("\u0085\ufeff\ufffd\ue000", "····")]
    [InlineData(null, "")]
    public void Of_WhatAStrangerWrote_DoesNothing(string? written, string shown) => Assert.Equal(shown, InertText.Of(written));

    [Fact]
    public void Of_LongerThanTold_IsCut()
    {
        Assert.Equal(new string('y', 79) + "…", InertText.Of(new string('y', 100_000)));
        Assert.Equal("ab…", InertText.Of("abcd", 3));
        Assert.Equal("abc", InertText.Of("abc", 3));
    }
}
