using System.Net;
using System.Security.Cryptography.X509Certificates;
using MQTTnet.Adapter;
using MQTTnet.Formatter;
using MQTTnet.Packets;

namespace FermentWatch.Intake.Embedded.Listening;

/// <summary>
/// Makes each client id one of the user who gives it: two users with the same id are two clients, so that nobody can take over,
/// push out or keep out another's by knowing what it is called.
/// </summary>
internal sealed class OwnedClientIds(IMqttChannelAdapter inner) : IMqttChannelAdapter
{
    // No text of MQTT may hold it, so no user's name does.
    private const char Between = '\0';

    public long BytesReceived => inner.BytesReceived;

    public long BytesSent => inner.BytesSent;

    public X509Certificate2? ClientCertificate => inner.ClientCertificate;

    public EndPoint RemoteEndPoint => inner.RemoteEndPoint;

    public EndPoint LocalEndPoint => inner.LocalEndPoint;

    public bool IsSecureConnection => inner.IsSecureConnection;

    public MqttPacketFormatterAdapter PacketFormatterAdapter => inner.PacketFormatterAdapter;

    /// <summary>The id as the client itself knows it.</summary>
    public static string AsGiven(string owned) => owned[(owned.IndexOf(Between, StringComparison.Ordinal) + 1)..];

    public Task ConnectAsync(CancellationToken cancellationToken) => inner.ConnectAsync(cancellationToken);

    public Task DisconnectAsync(CancellationToken cancellationToken) => inner.DisconnectAsync(cancellationToken);

    public async Task<MqttPacket> ReceivePacketAsync(CancellationToken cancellationToken)
    {
        MqttPacket packet = await inner.ReceivePacketAsync(cancellationToken);
        if (packet is MqttConnectPacket { ClientId.Length: > 0 } connect)
            connect.ClientId = $"{connect.Username}{Between}{connect.ClientId}";
        return packet;
    }

    public void ResetStatistics() => inner.ResetStatistics();

    public Task SendPacketAsync(MqttPacket packet, CancellationToken cancellationToken) => inner.SendPacketAsync(packet, cancellationToken);

    public void Dispose() => inner.Dispose();
}
