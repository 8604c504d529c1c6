using System.Text;
using FermentWatch.Intake.Decoding;

namespace FermentWatch.Intake.Tests.Decoding;

public sealed class NotANumberTokensTests
{
    [Theory]
    [InlineData("""{"a":nan,"b":-inf}""", """{"a":null,"b":null}""")]
    [InlineData("[NaN, +Infinity , 1]", "[null, null , 1]")]
    [InlineData("nan", "null")]
    [InlineData("""{"a":"nan","b":"\"nan","c":nan}""", """{"a":"nan","b":"\"nan","c":null}""")]
    [InlineData("""{"nan":1,"b":NAN}""", """{"nan":1,"b":null}""")]
    public void ReplaceWithNull_WordsWhereValuesBelong_BecomeNull(string document, string expected) =>
        Assert.Equal(expected, Encoding.UTF8.GetString(NotANumberTokens.ReplaceWithNull(Encoding.UTF8.GetBytes(document))!));

    [Theory]
    [InlineData("""{"a":1}""")]
    [InlineData("""{"a":nano}""")]
    [InlineData("""{"a":1nan}""")]
    [InlineData("\"\\")]
    [InlineData("-")]
    [InlineData("")]
    public void ReplaceWithNull_NoSuchWord_IsNull(string document) =>
        Assert.Null(NotANumberTokens.ReplaceWithNull(Encoding.UTF8.GetBytes(document)));
}
