using System.Collections;
using FermentWatch.Kitchen.Readings;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace FermentWatch.Intake.Embedded;

/// <summary>Acknowledges what clients publish, each message after it is stored.</summary>
internal static class Acknowledging
{
    private static readonly object _key = new();

    /// <summary>Begins to keep what a session has under way.</summary>
    public static void Begin(IDictionary session) => session[_key] = new CommitsUnderWay();

    /// <summary>What a session has under way.</summary>
    public static CommitsUnderWay? Of(IDictionary session) => session[_key] as CommitsUnderWay;

    /// <summary>Holds an acknowledgement back until what it acknowledges is stored.</summary>
    public static async Task HoldAsync(MqttServer server, InterceptingPacketEventArgs sending)
    {
        ushort? acknowledged = sending.Packet switch
        {
            MqttPubAckPacket ack => ack.PacketIdentifier,
            MqttPubRecPacket received => received.PacketIdentifier,
            _ => null,
        };
        if (acknowledged is not { } packet || Of(sending.SessionItems) is not { } commits)
            return;
        try
        {
            if ((await commits.OutcomeAsync(packet))?.RefusedFor is { } refusal && sending.Packet is MqttPubAckPacket answer)
                answer.ReasonCode = Answer(refusal);
        }
        catch (Exception)
        {
            // Not stored, and said so by whoever failed. The client must send again: it gets no answer and is disconnected.
            sending.ProcessPacket = false;
            await DisconnectAsync(server, sending.ClientId);
        }
    }

    /// <summary>What an MQTT 5 client is told of a message that could not be used.</summary>
    public static MqttPubAckReasonCode Answer(RejectReason reason) => reason switch
    {
        RejectReason.NotAllowed => MqttPubAckReasonCode.NotAuthorized,
        RejectReason.TooLarge => MqttPubAckReasonCode.QuotaExceeded,
        RejectReason.UnknownSensor or RejectReason.UnknownQuantity => MqttPubAckReasonCode.TopicNameInvalid,
        _ => MqttPubAckReasonCode.PayloadFormatInvalid,
    };

    private static async Task DisconnectAsync(MqttServer server, string clientId)
    {
        if ((await server.GetClientsAsync()).FirstOrDefault(client => client.Id == clientId) is { } client)
            await client.DisconnectAsync(new MqttServerClientDisconnectOptions { ReasonCode = MqttDisconnectReasonCode.UnspecifiedError });
    }
}
