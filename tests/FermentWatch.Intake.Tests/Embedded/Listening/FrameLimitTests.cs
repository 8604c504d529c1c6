using CsCheck;
using FermentWatch.Intake.Embedded.Listening;

namespace FermentWatch.Intake.Tests.Embedded.Listening;

public sealed class FrameLimitTests
{
    [Fact]
    public void Allows_PacketsWithinTheLimitHoweverTheyAreSplit_LetsAllThrough() =>
        Gen.Select(Gen.Int[0, 300].Array[1, 8], Gen.Int[1, 7].Array[1, 20]).Sample((bodies, cuts) =>
        {
            byte[] stream = [.. bodies.SelectMany(Packet)];
            var limit = new FrameLimit(300);
            int at = 0;
            for (int i = 0; at < stream.Length; i++)
            {
                int length = Math.Min(cuts[i % cuts.Length], stream.Length - at);
                Assert.True(limit.Allows(stream.AsSpan(at, length)));
                at += length;
            }
        });

    [Fact]
    public void Allows_PacketOverTheLimit_RefusesAtItsHeader() =>
        Gen.Select(Gen.Int[0, 300].Array[0, 5], Gen.Int[301, 268_435_455]).Sample((bodies, tooLong) =>
        {
            var limit = new FrameLimit(300);
            Assert.True(limit.Allows([.. bodies.SelectMany(Packet)]));

            Assert.False(limit.Allows(Header(tooLong)));
        });

    [Theory]
    [InlineData(new byte[] { 0x10, 0x80, 0x80, 0x80, 0x80, 0x01 })]
    [InlineData(new byte[] { 0x10, 0xFF, 0xFF, 0xFF, 0xFF })]
    public void Allows_LengthOfMoreThanFourBytes_Refuses(byte[] stream) =>
        Assert.False(new FrameLimit(int.MaxValue).Allows(stream));

    [Fact]
    public void LongestBytes_RaisedWhileRunning_HoldsFromTheNextPacket()
    {
        var limit = new FrameLimit(10);
        Assert.True(limit.Allows(Packet(10)));

        limit.LongestBytes = 20;

        Assert.True(limit.Allows(Packet(20)));
        Assert.False(limit.Allows(Header(21)));
    }

    private static byte[] Packet(int body) => [.. Header(body), .. new byte[body]];

    // The variable byte integer of MQTT 5.0 section 1.5.5.
    private static byte[] Header(int length)
    {
        var bytes = new List<byte> { 0x30 };
        do
        {
            bytes.Add((byte)((length % 128) | (length >= 128 ? 0x80 : 0)));
            length /= 128;
        }
        while (length > 0);
        return [.. bytes];
    }
}
