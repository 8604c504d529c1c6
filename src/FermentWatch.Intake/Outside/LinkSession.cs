using System.Buffers;
using System.Threading.Channels;
using FermentWatch.Intake.Door;
using FermentWatch.Kitchen.Topics;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using NodaTime;

namespace FermentWatch.Intake.Outside;

/// <summary>
/// One connection to an outside broker. What is received is handed to the door in batches, so that many readings share one
/// commit, and acknowledged in the order of receipt, each after it was stored. What could not be stored is not acknowledged: the
/// session ends, and the broker sends it again at the next.
/// </summary>
internal sealed class LinkSession : IDisposable
{
    // A power cut between commit and acknowledgement has the broker send the batch again: large enough to share a commit, and no larger.
    private const int LargestBatch = 256;

    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();
    private readonly Channel<MqttApplicationMessageReceivedEventArgs> _received =
        Channel.CreateUnbounded<MqttApplicationMessageReceivedEventArgs>(new UnboundedChannelOptions { SingleReader = true });

    private readonly MessageDoor _door;
    private readonly LinkCounts _counts;
    private readonly TimeProvider _time;
    private HashSet<string> _filters = [];

    public LinkSession(MessageDoor door, LinkCounts counts, TimeProvider time)
    {
        (_door, _counts, _time) = (door, counts, time);
        _client.ApplicationMessageReceivedAsync += received =>
        {
            received.AutoAcknowledge = false;
            // Unbounded here, bounded by the broker: it sends no more than it may have unacknowledged under way.
            _received.Writer.TryWrite(received);
            return Task.CompletedTask;
        };
        _client.DisconnectedAsync += _ =>
        {
            _received.Writer.TryComplete();
            return Task.CompletedTask;
        };
    }

    public bool IsConnected => _client.IsConnected;

    public Task<MqttClientConnectResult> ConnectAsync(MqttClientOptions options, CancellationToken cancellationToken) =>
        _client.ConnectAsync(options, cancellationToken);

    /// <summary>Subscribes to what is new and ends what is no longer wanted; returns filters that were refused, with the answer.</summary>
    /// <param name="filters">What to listen to.</param>
    /// <param name="joinedIn">Filters that may have been joined into those, and of which the broker's session may still know.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task<IReadOnlyList<(string Filter, string Answer)>> SubscribeAsync(
        IReadOnlyList<string> filters, IReadOnlyList<string> joinedIn, CancellationToken cancellationToken)
    {
        var refused = new List<(string, string)>();
        string[] added = [.. filters.Except(_filters)];
        string[] removed = added.Length > 0 ? [.. _filters.Union(joinedIn).Except(filters)] : [.. _filters.Except(filters)];
        // First the new and then the old: a wider filter that replaces a narrower one must leave no gap.
        foreach (string filter in added)
        {
            MqttClientSubscribeResult result = await _client.SubscribeAsync(SubscribeOptions(filter), cancellationToken);
            foreach (MqttClientSubscribeResultItem item in result.Items)
                if (item.ResultCode > MqttClientSubscribeResultCode.GrantedQoS2)
                    refused.Add((filter, item.ResultCode.ToString()));
        }
        foreach (string filter in removed)
            await _client.UnsubscribeAsync(filter, cancellationToken);
        _filters = [.. filters];
        return refused;
    }

    public Task PublishAsync(string topic, ReadOnlyMemory<byte> payload, bool retain, CancellationToken cancellationToken) =>
        _client.PublishAsync(
            new MqttApplicationMessageBuilder()
                .WithTopic(topic)
                .WithPayload(payload.ToArray())
                .WithRetainFlag(retain)
                .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
                .Build(),
            cancellationToken);

    /// <summary>Takes messages in until the connection ends.</summary>
    /// <exception cref="IOException">Something could not be stored.</exception>
    public async Task RunAsync(CancellationToken stopping)
    {
        var batch = new List<(MqttApplicationMessageReceivedEventArgs Received, Task<DoorOutcome> Taking)>();
        while (await _received.Reader.WaitToReadAsync(stopping))
        {
            while (batch.Count < LargestBatch && _received.Reader.TryRead(out MqttApplicationMessageReceivedEventArgs? received))
                batch.Add((received, _door.TakeAsync(Incoming(received), CancellationToken.None)));
            await FinishAsync(batch);
            batch.Clear();
        }
    }

    /// <summary>Says goodbye if that is possible; the broker keeps the session.</summary>
    public async Task DisconnectAsync()
    {
        if (!_client.IsConnected)
            return;
        using var timeout = new CancellationTokenSource(TimeSpan.FromSeconds(2), _time);
        try
        {
            await PublishAsync(OwnTopics.ServiceStatus, "offline"u8.ToArray(), retain: true, timeout.Token);
            await _client.DisconnectAsync(new MqttClientDisconnectOptions(), timeout.Token);
        }
        catch (Exception)
        {
            // Whatever kept us from saying goodbye, our last will speaks for us, and the link goes on.
        }
    }

    public void Dispose() => _client.Dispose();

    private MqttClientSubscribeOptions SubscribeOptions(string filter)
    {
        var topic = new MqttTopicFilter { Topic = filter, QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce };
        if (_client.Options.ProtocolVersion == MqttProtocolVersion.V500)
        {
            // Our own topics out must not come back in. The retain flag then tells what had been retained from what is new.
            topic.NoLocal = true;
            topic.RetainAsPublished = false;
            topic.RetainHandling = MqttRetainHandling.SendAtSubscribeIfNewSubscriptionOnly;
        }
        return new MqttClientSubscribeOptionsBuilder().WithTopicFilter(topic).Build();
    }

    private async Task FinishAsync(List<(MqttApplicationMessageReceivedEventArgs Received, Task<DoorOutcome> Taking)> batch)
    {
        Exception? broken = null;
        foreach ((MqttApplicationMessageReceivedEventArgs received, Task<DoorOutcome> taking) in batch)
        {
            try
            {
                await taking;
            }
            catch (Exception exception)
            {
                // Whatever it was, this message is not stored, and acknowledging any later one would tell the broker that it may
                // be forgotten. All are counted, the first is passed on.
                _counts.CountNotStored();
                broken ??= exception;
            }
            if (broken is null)
                await AcknowledgeAsync(received);
        }
        if (broken is not null)
            throw new IOException($"A message could not be taken in. {broken.Message}", broken);
    }

    private async Task AcknowledgeAsync(MqttApplicationMessageReceivedEventArgs received)
    {
        try
        {
            await received.AcknowledgeAsync(CancellationToken.None);
            _counts.CountAcknowledged();
        }
        catch (Exception)
        {
            // Stored, and the connection is gone: it comes again, and the log or the redelivery memory knows it. The library tells a
            // connection that has just broken by whatever it trips over, a null reference among it; what else was received must be
            // stored all the same, because a broker that was killed may not have it any more.
        }
    }

    private IncomingMessage Incoming(MqttApplicationMessageReceivedEventArgs received)
    {
        MqttApplicationMessage message = received.ApplicationMessage;
        return new IncomingMessage(
            _client.Options.ClientId,
            message.Topic,
            message.Payload.ToArray(),
            Instant.FromUnixTimeMilliseconds(_time.GetUtcNow().ToUnixTimeMilliseconds()),
            received.PacketIdentifier == 0 ? null : new Delivery(received.PacketIdentifier, message.Dup),
            message.Retain ? MessageOrigin.RetainedReplay : MessageOrigin.OutsideBroker);
    }
}
