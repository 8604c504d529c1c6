using System.Buffers.Text;
using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Kitchen.Tests.Notices;

public class BrowserKeysTests
{
    // The receiver of RFC 8291's example: M. Thomson, "Message Encryption for Web Push", 2017, appendix A.
    private const string Good = "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4";

    [Fact]
    public void IsPublicKey_PointOnTheCurve_IsOne() => Assert.True(BrowserKeys.IsPublicKey(Good));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("not base64url!")]
    [InlineData("BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcx")]
    public void IsPublicKey_NotSixtyFiveBytes_IsNone(string? text) => Assert.False(BrowserKeys.IsPublicKey(text));

    [Theory]
    [InlineData(0, 3)]
    [InlineData(64, 0)]
    public void IsPublicKey_AnotherFormOrOffTheCurve_IsNone(int at, byte value)
    {
        byte[] point = Base64Url.DecodeFromChars(Good);
        point[at] = value;
        Assert.False(BrowserKeys.IsPublicKey(Base64Url.EncodeToString(point)));
    }

    [Theory]
    [InlineData("BTBZMqHH6r4Tts7J_aSIgg", true)]
    [InlineData("BTBZMqHH6r4Tts7J_aSI", false)]
    [InlineData(null, false)]
    public void IsAuth_SixteenBytes_IsOne(string? text, bool one) => Assert.Equal(one, BrowserKeys.IsAuth(text));

    [Fact]
    public void FromSecret_WhatWasKept_ComesBack()
    {
        var keys = new BrowserKeys(Good, "BTBZMqHH6r4Tts7J_aSIgg");
        Assert.Equal(keys, BrowserKeys.FromSecret(keys.ToSecret()));
    }
}
