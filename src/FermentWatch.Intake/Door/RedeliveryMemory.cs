using System.IO.Hashing;
using System.Runtime.InteropServices;
using NodaTime;

namespace FermentWatch.Intake.Door;

/// <summary>
/// Tells a redelivery of a message whose payload carries no absolute time from a new message with the same value. A sender that
/// saw no acknowledgement sends again with the DUP flag and the same packet identifier; if the same bytes with that identifier were
/// stored from the same client a short while ago, it is the same reading. After a restart nothing is remembered: then such a
/// reading is stored at least once, not exactly once.
/// </summary>
public sealed class RedeliveryMemory
{
    /// <summary>How long after its storing a message is remembered.</summary>
    public static readonly Duration Span = Duration.FromMinutes(10);

    // What is remembered is bounded, whatever clients do: the oldest is forgotten first.
    private const int MostRemembered = 20_000;

    private readonly Lock _gate = new();
    private readonly Dictionary<(string ClientId, ushort Packet), Remembered> _stored = [];
    private readonly Queue<((string ClientId, ushort Packet) Key, Instant At)> _order = new();

    /// <summary>Whether this message was stored a short while ago.</summary>
    public bool IsRedelivery(IncomingMessage message)
    {
        if (message.Delivery is not { IsDuplicate: true } delivery)
            return false;
        lock (_gate)
            return _stored.TryGetValue((message.ClientId, delivery.PacketIdentifier), out Remembered remembered)
                && message.ReceivedAt - remembered.At <= Span
                && remembered.Hash == Hash(message);
    }

    /// <summary>Remembers a message whose readings are committed.</summary>
    public void Remember(IncomingMessage message)
    {
        if (message.Delivery is not { } delivery)
            return;
        var key = (message.ClientId, delivery.PacketIdentifier);
        lock (_gate)
        {
            _stored[key] = new Remembered(Hash(message), message.ReceivedAt);
            _order.Enqueue((key, message.ReceivedAt));
            while (_order.Count > MostRemembered || _order.Peek().At + Span < message.ReceivedAt)
                Forget(_order.Dequeue());
        }
    }

    private void Forget(((string ClientId, ushort Packet) Key, Instant At) oldest)
    {
        if (_stored.TryGetValue(oldest.Key, out Remembered remembered) && remembered.At == oldest.At)
            _stored.Remove(oldest.Key);
    }

    private static UInt128 Hash(IncomingMessage message)
    {
        var hash = new XxHash128();
        hash.Append(MemoryMarshal.AsBytes(message.Topic.AsSpan()));
        hash.Append(message.Payload.Span);
        return hash.GetCurrentHashAsUInt128();
    }

    private readonly record struct Remembered(UInt128 Hash, Instant At);
}
