using FermentWatch.Intake.Door;
using NodaTime;

namespace FermentWatch.Intake.Tests.Door;

public sealed class RedeliveryMemoryTests
{
    private static readonly Instant _now = Instant.FromUtc(2026, 10, 4, 8, 0);

    [Fact]
    public void IsRedelivery_WholeWindowSentAgain_IsToldOneByOne()
    {
        var memory = new RedeliveryMemory();
        for (ushort packet = 1; packet <= 100; packet++)
            memory.Remember(Message(packet, false, 0));

        for (ushort packet = 1; packet <= 100; packet++)
            Assert.True(memory.IsRedelivery(Message(packet, true, 2)));
        Assert.False(memory.IsRedelivery(Message(101, true, 2)));
    }

    [Fact]
    public void Remember_IdentifierUsedAgain_ForgetsTheFirstOnly()
    {
        var memory = new RedeliveryMemory();
        memory.Remember(Message(1, false, 0));
        memory.Remember(Message(1, false, 400));
        memory.Remember(Message(2, false, 700));

        Assert.True(memory.IsRedelivery(Message(1, true, 800)));
    }

    private static IncomingMessage Message(ushort packet, bool duplicate, int secondsLater) =>
        new("device", "t", "17.5"u8.ToArray(), _now + Duration.FromSeconds(secondsLater), new Delivery(packet, duplicate));
}
