using System.Buffers;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using MQTTnet.Channel;
using MQTTnet.Exceptions;
using MQTTnet.Implementations;

namespace FermentWatch.Intake.Embedded.Listening;

/// <summary>A client's connection that ends when the client announces a packet that is too long.</summary>
internal sealed class GuardedChannel(MqttTcpChannel inner, FrameLimit limit, Action tooLong) : IMqttChannel
{
    public X509Certificate2? ClientCertificate => inner.ClientCertificate;

    public EndPoint RemoteEndPoint => inner.RemoteEndPoint;

    public EndPoint LocalEndPoint => inner.LocalEndPoint;

    public bool IsSecureConnection => inner.IsSecureConnection;

    public Task ConnectAsync(CancellationToken cancellationToken) => inner.ConnectAsync(cancellationToken);

    public Task DisconnectAsync(CancellationToken cancellationToken) => inner.DisconnectAsync(cancellationToken);

    public async Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
    {
        int read = await inner.ReadAsync(buffer, offset, count, cancellationToken);
        if (limit.Allows(buffer.AsSpan(offset, read)))
            return read;
        tooLong();
        throw new MqttCommunicationException("The packet is longer than allowed.");
    }

    public Task WriteAsync(ReadOnlySequence<byte> buffer, bool isEndOfPacket, CancellationToken cancellationToken) =>
        inner.WriteAsync(buffer, isEndOfPacket, cancellationToken);

    public void Dispose() => inner.Dispose();
}
