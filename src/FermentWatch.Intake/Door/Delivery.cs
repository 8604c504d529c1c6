namespace FermentWatch.Intake.Door;

/// <summary>How a message at QoS 1 or 2 was delivered.</summary>
/// <param name="PacketIdentifier">The identifier its sender gave it; a redelivery carries the same.</param>
/// <param name="IsDuplicate">The DUP flag: the sender says that it may have sent this before.</param>
public readonly record struct Delivery(ushort PacketIdentifier, bool IsDuplicate);
