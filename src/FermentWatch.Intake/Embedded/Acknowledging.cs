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
    private static readonly object _canRefuseKey = new();

    /// <summary>Begins to keep what a session has under way.</summary>
    /// <param name="session">The session.</param>
    /// <param name="canRefuse">Whether its version of MQTT has an answer that refuses a message.</param>
    public static void Begin(IDictionary session, bool canRefuse)
    {
        session[_key] = new CommitsUnderWay();
        session[_canRefuseKey] = canRefuse;
    }

    /// <summary>Whether a session can be told that a message was refused.</summary>
    public static bool CanRefuse(IDictionary session) => session[_canRefuseKey] is true;

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
            if ((await commits.OutcomeAsync(packet))?.RefusedFor is not { } refusal)
                return;
            if (IsOfTheTopic(refusal) && !CanRefuse(sending.SessionItems))
                await CutAsync(server, sending);
            else if (sending.Packet is MqttPubAckPacket answer)
                answer.ReasonCode = Answer(refusal);
        }
        catch (Exception)
        {
            // Not stored, and said so by whoever failed. The client must send again: it gets no answer and is disconnected.
            await CutAsync(server, sending);
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

    /// <summary>
    /// Whether nothing sent there could ever be taken. What a probe that is unplugged sends is another matter: it is counted, shown and
    /// done with, and a device that sent it again for ever would keep its own good readings back.
    /// </summary>
    private static bool IsOfTheTopic(RejectReason reason) => reason is RejectReason.UnknownSensor or RejectReason.UnknownQuantity;

    private static Task CutAsync(MqttServer server, InterceptingPacketEventArgs sending)
    {
        sending.ProcessPacket = false;
        return DisconnectAsync(server, sending.ClientId);
    }

    private static async Task DisconnectAsync(MqttServer server, string clientId)
    {
        if ((await server.GetClientsAsync()).FirstOrDefault(client => client.Id == clientId) is { } client)
            await client.DisconnectAsync(new MqttServerClientDisconnectOptions { ReasonCode = MqttDisconnectReasonCode.UnspecifiedError });
    }
}
