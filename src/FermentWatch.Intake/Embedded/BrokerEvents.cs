using System.Buffers;
using System.Collections;
using System.Net;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded.Listening;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Typed;
using Microsoft.Extensions.Logging;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using MQTTnet.Server;
using NodaTime;

namespace FermentWatch.Intake.Embedded;

/// <summary>What the broker answers when clients connect, publish and subscribe.</summary>
internal sealed class BrokerEvents(
    BrokerOptions options, ConnectGate gate, MessageDoor door, BrokerCounts counts, FirstTimes said, TimeProvider time, ILogger logger)
{
    /// <summary>Marks what we publish ourselves.</summary>
    public static readonly IDictionary OurOwn = new Hashtable();

    private const int MostGuessesWaiting = 8;

    // The words online and offline, and some spaces.
    private const int LongestStatus = 64;

    /// <summary>Below the time in which a client must have come in.</summary>
    private static readonly TimeSpan LongestGuessWait = TimeSpan.FromSeconds(5);

    private static readonly object _grantKey = new();
    private static readonly object _deliveryKey = new();

    private readonly GuessPace _guesses = new(time, LongestGuessWait, MostGuessesWaiting);
    private Action<EndPoint?> _letIn = _ => { };
    private int _logIsBroken;

    public void AttachTo(MqttServer server, BoundedListener listener)
    {
        _letIn = listener.LetIn;
        server.ValidatingConnectionAsync += OnConnectingAsync;
        server.ClientDisconnectedAsync += OnDisconnectedAsync;
        server.InterceptingInboundPacketAsync += OnPacketAsync;
        server.InterceptingPublishAsync += OnPublishAsync;
        server.InterceptingOutboundPacketAsync += sending => Acknowledging.HoldAsync(server, sending);
        server.InterceptingSubscriptionAsync += OnSubscribeAsync;
        server.QueuedApplicationMessageOverwrittenAsync += OnDroppedAsync;
    }

    private async Task OnConnectingAsync(ValidatingConnectionEventArgs connecting)
    {
        string clientId = connecting.ClientId ?? "";
        if (clientId.Length == 0 && connecting.ProtocolVersion == MQTTnet.Formatter.MqttProtocolVersion.V500)
            clientId = connecting.AssignedClientIdentifier = $"auto-{Guid.NewGuid():N}";

        string user = connecting.UserName ?? "";
        string address = (connecting.RemoteEndPoint as IPEndPoint)?.Address.ToString() ?? "unknown";
        (ClientGrant? grant, RefusalReason? refusal) = clientId.Length == 0
            ? (null, RefusalReason.NoClientId)
            : await EnterAsync(clientId, user, connecting.RawPassword, address);
        if (grant is not null)
        {
            connecting.SessionItems[_grantKey] = grant;
            Acknowledging.Begin(connecting.SessionItems, canRefuse: connecting.ProtocolVersion == MQTTnet.Formatter.MqttProtocolVersion.V500);
            _letIn(connecting.RemoteEndPoint);
            return;
        }

        connecting.ReasonCode = ConnectGate.Answer(refusal!.Value);
        counts.Count(refusal.Value);
        if (said.IsFirst($"connect {address} {user} {refusal}"))
            BrokerLog.Refused(logger, NameOf(clientId), SafeText.ForLog(user), address, refusal.Value);
    }

    /// <summary>A client id as it is put in the log.</summary>
    public static string NameOf(string clientId) => SafeText.ForLog(OwnedClientIds.AsGiven(clientId));

    private async Task<(ClientGrant?, RefusalReason?)> EnterAsync(
        string clientId, string user, ReadOnlyMemory<byte> password, string address)
    {
        if (!await _guesses.WaitAsync(address, user, CancellationToken.None))
            return (null, RefusalReason.TooManyGuesses);
        try
        {
            var answer = await gate.EnterAsync(clientId, user, System.Text.Encoding.UTF8.GetString(password.Span));
            if (answer.Refusal == RefusalReason.BadCredentials)
                _guesses.Failed(address, user);
            else
                _guesses.Succeeded(address, user);
            return answer;
        }
        catch (Exception exception) when (exception is IOException or System.Data.Common.DbException)
        {
            if (said.IsFirst("records unavailable"))
                BrokerLog.RecordsUnavailable(logger, exception);
            return (null, RefusalReason.RecordsUnavailable);
        }
    }

    private Task OnDisconnectedAsync(ClientDisconnectedEventArgs left)
    {
        gate.Leave(left.ClientId);
        return Task.CompletedTask;
    }

    private static Task OnPacketAsync(InterceptingPacketEventArgs incoming)
    {
        // Packets of one client are handled one after the other, so what is noted here is there when its publish is judged.
        if (incoming.Packet is MqttPublishPacket publish)
            incoming.SessionItems[_deliveryKey] = publish.PacketIdentifier == 0
                ? null
                : new Delivery(publish.PacketIdentifier, publish.Dup);
        return Task.CompletedTask;
    }

    private async Task OnPublishAsync(InterceptingPublishEventArgs publish)
    {
        if (ReferenceEquals(publish.SessionItems, OurOwn))
            return;
        publish.ProcessPublish = false;
        if (publish.SessionItems[_grantKey] is not ClientGrant grant)
        {
            publish.CloseConnection = true;
            return;
        }

        await KeepPaceAsync(publish, grant);
        var message = new IncomingMessage(
            publish.ClientId,
            publish.ApplicationMessage.Topic ?? "",
            publish.ApplicationMessage.Payload.ToArray(),
            Instant.FromUnixTimeMilliseconds(time.GetUtcNow().ToUnixTimeMilliseconds()),
            publish.SessionItems[_deliveryKey] as Delivery?);
        if (await RefusedAsync(message, grant) is { } refusal)
        {
            publish.Response.ReasonCode = Acknowledging.Answer(refusal);
            // MQTT 3.1.1 has no answer that refuses, and to acknowledge would say that it was taken.
            publish.CloseConnection = message.Delivery is not null && !Acknowledging.CanRefuse(publish.SessionItems);
            return;
        }
        await grant.Share.EnterAsync(message.Payload.Length);
        Task<DoorOutcome> TakeInShareAsync() => TakeAsync(message, grant.Share);
        if (message.Delivery is { } delivery && Acknowledging.Of(publish.SessionItems) is { } commits)
            await commits.BeginAsync(delivery.PacketIdentifier, TakeInShareAsync);
        else
            await TakeInShareAsync();
        publish.ProcessPublish = true;
        // The word on itself of a sensor we know may be kept for later listeners; anything more would let clients fill our memory.
        if (publish.ApplicationMessage.Retain)
            publish.ApplicationMessage.Retain = message.Payload.Length <= LongestStatus
                && await door.IsStatusOfASensorAsync(message.Topic, publish.CancellationToken);
    }

    private async Task KeepPaceAsync(InterceptingPublishEventArgs publish, ClientGrant grant)
    {
        if (grant.Share.Take() is not { Ticks: > 0 } wait)
            return;
        counts.Count(RefusalReason.TooFast);
        if (said.IsFirst($"fast {grant.Credential.User}"))
            BrokerLog.TooFast(logger, NameOf(publish.ClientId), SafeText.ForLog(grant.Credential.User), options.MaxMessagesPerSecond);
        await Task.Delay(wait, time, publish.CancellationToken);
    }

    private async Task<DoorOutcome> TakeAsync(IncomingMessage message, UserShare share)
    {
        try
        {
            DoorOutcome outcome = await door.TakeAsync(message, CancellationToken.None);
            if (outcome.Appended.Stored > 0 && Interlocked.Exchange(ref _logIsBroken, 0) == 1)
                BrokerLog.LogMended(logger);
            return outcome;
        }
        catch (Exception exception)
        {
            if (Interlocked.Exchange(ref _logIsBroken, 1) == 0)
                BrokerLog.LogBroken(logger, exception);
            throw;
        }
        finally
        {
            share.Leave(message.Payload.Length);
        }
    }

    /// <summary>Counts a message that is not let in; null if it is.</summary>
    private async Task<RejectReason?> RefusedAsync(IncomingMessage message, ClientGrant grant)
    {
        if (message.Payload.Length > options.MaxPayloadBytes)
        {
            await door.RefuseAsync(message, null, RejectReason.TooLarge,
                $"The payload has {message.Payload.Length} bytes; at most {options.MaxPayloadBytes} are taken.", CancellationToken.None);
            return RejectReason.TooLarge;
        }
        if (grant.MayPublish(message.Topic))
            return null;

        counts.Count(RefusalReason.PublishNotAllowed);
        if (said.IsFirst($"publish {message.ClientId} {grant.Credential.User}"))
            BrokerLog.TopicRefused(logger, NameOf(message.ClientId), SafeText.ForLog(message.Topic), RefusalReason.PublishNotAllowed);
        await door.RefuseAsync(message, null, RejectReason.NotAllowed,
            $"The user {grant.Credential.User} may publish under {grant.Credential.TopicFilter} only.", CancellationToken.None);
        return RejectReason.NotAllowed;
    }

    private Task OnSubscribeAsync(InterceptingSubscriptionEventArgs subscribe)
    {
        string filter = subscribe.TopicFilter.Topic;
        if (subscribe.SessionItems[_grantKey] is ClientGrant grant && grant.MaySubscribe(filter))
            return Task.CompletedTask;

        subscribe.ProcessSubscription = false;
        subscribe.Response.ReasonCode = MqttSubscribeReasonCode.NotAuthorized;
        counts.Count(RefusalReason.SubscribeNotAllowed);
        if (said.IsFirst($"subscribe {subscribe.ClientId}"))
            BrokerLog.TopicRefused(logger, NameOf(subscribe.ClientId), SafeText.ForLog(filter), RefusalReason.SubscribeNotAllowed);
        return Task.CompletedTask;
    }

    private Task OnDroppedAsync(QueueMessageOverwrittenEventArgs dropped)
    {
        counts.CountDropped();
        if (said.IsFirst($"slow {dropped.ReceiverClientId}"))
            BrokerLog.SlowSubscriber(logger, NameOf(dropped.ReceiverClientId));
        return Task.CompletedTask;
    }
}
