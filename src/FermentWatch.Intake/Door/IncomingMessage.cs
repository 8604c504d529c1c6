using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Door;

/// <summary>A message as it reached one of our two doors.</summary>
/// <param name="ClientId">Who delivered it; redeliveries are told by it.</param>
/// <param name="Topic">The topic it came on.</param>
/// <param name="Payload">Its bytes, which the door may keep.</param>
/// <param name="ReceivedAt">When it came.</param>
/// <param name="Delivery">The packet identifier and whether it says that it came before; null at QoS 0.</param>
/// <param name="Origin">Which door it came through, and how.</param>
public sealed record IncomingMessage(
    string ClientId,
    string Topic,
    ReadOnlyMemory<byte> Payload,
    Instant ReceivedAt,
    Delivery? Delivery,
    MessageOrigin Origin = MessageOrigin.OurBroker);

/// <summary>Which door a message came through, and how.</summary>
public enum MessageOrigin
{
    /// <summary>Published to the broker in the service by a client that may.</summary>
    OurBroker = 0,

    /// <summary>Published to an outside broker while we listened, or queued there for us.</summary>
    OutsideBroker = 1,

    /// <summary>What an outside broker had retained when we subscribed: last known, time unknown.</summary>
    RetainedReplay = 2,
}

/// <summary>How a message at QoS 1 or 2 was delivered.</summary>
/// <param name="PacketIdentifier">The identifier its sender gave it; a redelivery carries the same.</param>
/// <param name="IsDuplicate">The DUP flag: the sender says that it may have sent this before.</param>
public readonly record struct Delivery(ushort PacketIdentifier, bool IsDuplicate);

/// <summary>What became of a message. Whatever it is, the message is done with and may be acknowledged.</summary>
/// <param name="Appended">What the log did with its readings.</param>
/// <param name="Rejected">Reasons for which it or parts of it were not stored, none if all was.</param>
public sealed record DoorOutcome(AppendResult Appended, IReadOnlyList<RejectReason> Rejected)
{
    /// <summary>Nothing to store and nothing wrong.</summary>
    public static DoorOutcome Nothing { get; } = new(default, []);

    /// <summary>The first reason, if nothing of the message was of use.</summary>
    public RejectReason? RefusedFor =>
        Rejected.Count > 0 && Appended.Stored + Appended.Duplicates + Appended.Conflicts == 0 ? Rejected[0] : null;
}
