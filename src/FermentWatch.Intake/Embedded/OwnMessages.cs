using System.Buffers;
using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace FermentWatch.Intake.Embedded;

/// <summary>
/// Which of the messages we publish ourselves got to somebody. A message is known again by its bytes: the broker hands the very
/// same array on to each client.
/// </summary>
internal sealed class OwnMessages
{
    private readonly ConcurrentDictionary<byte[], Watch> _underWay = new(ReferenceEqualityComparer.Instance);

    public void AttachTo(MqttServer server)
    {
        server.ApplicationMessageNotConsumedAsync += missed => SettleAsync(missed.ApplicationMessage.Payload, got: false);
        server.ClientAcknowledgedPublishPacketAsync += answer => SettleAsync(answer.PublishPacket.Payload, got: true);
        server.InterceptingOutboundPacketAsync += OnSendingAsync;
    }

    /// <summary>Begins to watch over a message, until the watch is disposed of.</summary>
    public Watch Begin(byte[] payload) => _underWay[payload] = new Watch(this, payload);

    /// <summary>Who listens at QoS 0 acknowledges nothing: what is on its way to them is all that can be known.</summary>
    private Task OnSendingAsync(InterceptingPacketEventArgs sending) =>
        sending.Packet is MqttPublishPacket { QualityOfServiceLevel: MqttQualityOfServiceLevel.AtMostOnce } publish
            ? SettleAsync(publish.Payload, got: true)
            : Task.CompletedTask;

    private Task SettleAsync(ReadOnlySequence<byte> payload, bool got)
    {
        if (SequenceMarshal.TryGetArray(payload, out ArraySegment<byte> bytes) && bytes.Array is { } array
            && _underWay.TryGetValue(array, out Watch? watch))
            watch.Settle(got);
        return Task.CompletedTask;
    }

    /// <summary>The watch over one message.</summary>
    public sealed class Watch(OwnMessages all, byte[] payload) : IDisposable
    {
        private readonly TaskCompletionSource<bool> _got = new(TaskCreationOptions.RunContinuationsAsynchronously);

        /// <summary>
        /// Completes with true once a client has acknowledged the message, or it goes out to one that acknowledges nothing; with
        /// false if the broker found no subscription of a client for it.
        /// </summary>
        public Task<bool> Got => _got.Task;

        public void Dispose() => all._underWay.TryRemove(payload, out _);

        internal void Settle(bool got) => _got.TrySetResult(got);
    }
}
