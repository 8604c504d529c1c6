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
