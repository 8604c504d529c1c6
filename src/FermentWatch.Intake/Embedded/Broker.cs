using System.Net;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded.Listening;
using FermentWatch.Kitchen.Sensors;
using Microsoft.Extensions.Logging;
using MQTTnet;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace FermentWatch.Intake.Embedded;

/// <summary>
/// The MQTT broker that lives in the service. A publish is acknowledged after its readings are committed; if they cannot be, the
/// client is disconnected and sends again.
/// </summary>
public sealed class Broker : IAsyncDisposable
{
    private readonly BrokerOptions _options;
    private readonly TimeProvider _time;
    private readonly ILogger<Broker> _logger;
    private readonly ConnectGate _gate;
    private readonly BrokerEvents _events;
    private readonly FirstTimes _said;
    private readonly OwnMessages _ownMessages = new();
    private MqttServer? _server;
    private bool _hasStopped;
    private ServerCertificate? _certificate;
    private CancellationTokenSource? _stopping;
    private Task _credentialCheck = Task.CompletedTask;

    /// <summary>Longest wait for a listener to acknowledge what we publish, above zero. Default: 10 seconds.</summary>
    public TimeSpan AnswerPatience { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Makes a broker that does not run yet.</summary>
    /// <exception cref="ArgumentException">At least one setting is wrong; the message names all that are.</exception>
    public Broker(BrokerOptions options, ISensorBook book, MessageDoor door, TimeProvider time, ILogger<Broker> logger)
    {
        options.ThrowIfWrong();
        _options = options;
        _time = time;
        _logger = logger;
        _gate = new ConnectGate(book, options, time);
        _said = new FirstTimes(BrokerLog.SayAgainAfter, time);
        _events = new BrokerEvents(options, _gate, door, Counts, _said, time, logger);
    }

    /// <summary>What was refused or dropped.</summary>
    public BrokerCounts Counts { get; } = new();

    /// <summary>How many clients are connected.</summary>
    public int ConnectedClients => _gate.Count;

    /// <summary>Whether it lets clients in.</summary>
    public bool IsRunning => _server is not null;

    /// <summary>The port it listens on without TLS while it runs; null if it does not.</summary>
    public int? Port { get; private set; }

    /// <summary>The port it listens on with TLS while it runs; null if it does not.</summary>
    public int? TlsPort { get; private set; }

    /// <summary>Starts to listen.</summary>
    /// <exception cref="System.Net.Sockets.SocketException">The address or port cannot be had.</exception>
    /// <exception cref="System.Security.Cryptography.CryptographicException">The certificate or its key cannot be used.</exception>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        _certificate = _options.CertificateFile is { } file
            ? new ServerCertificate(file, _options.CertificateKeyFile, _options.CertificatePassword, _time)
            : null;
        var listener = new BoundedListener(Places(_certificate), _options, Counts, _said, _time, _logger);
        MqttServerOptions serverOptions = new MqttServerOptionsBuilder().WithDefaultCommunicationTimeout(_options.ConnectTimeout).Build();
        MqttServer server = new MqttServerFactory().CreateMqttServer(serverOptions, [listener], new LibraryLogger(_logger));
        _events.AttachTo(server, listener);
        _ownMessages.AttachTo(server);
        try
        {
            await server.StartAsync();
        }
        catch
        {
            server.Dispose();
            throw;
        }
        _server = server;
        NotePorts(listener.Ports);
        _stopping = new CancellationTokenSource();
        _credentialCheck = CheckCredentialsAsync(server, _stopping.Token);
    }

    /// <summary>Lets nobody in any more, lets running commits end, and disconnects all.</summary>
    public async Task StopAsync(CancellationToken cancellationToken)
    {
        if (_server is not { } server)
            return;
        (_server, _hasStopped) = (null, true);
        await _stopping!.CancelAsync();
        await _credentialCheck;
        server.AcceptNewConnections = false;
        await server.StopAsync(new MqttServerStopOptions());
        server.Dispose();
        _stopping.Dispose();
        _certificate?.Dispose();
        BrokerLog.Stopped(_logger);
    }

    /// <summary>Publishes something of our own to those who listen.</summary>
    /// <param name="topic">The topic, no wildcard in it.</param>
    /// <param name="payload">The bytes; empty with <paramref name="retain"/> removes what was retained.</param>
    /// <param name="retain">Whether those who subscribe later get it too, until the service stops.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    /// <returns>
    /// For what is retained true at once. Else whether a client got it: it acknowledged the message, or listens at QoS 0 and had it
    /// sent. False where nobody listens, or nobody acknowledges in time, and once the broker has stopped: a loop may be in the middle of a
    /// pass then.
    /// </returns>
    /// <exception cref="InvalidOperationException">The broker was never started.</exception>
    public async Task<bool> PublishAsync(string topic, ReadOnlyMemory<byte> payload, bool retain, CancellationToken cancellationToken)
    {
        if (_server is not { } server)
            return _hasStopped ? false : throw new InvalidOperationException("The broker does not run.");
        byte[] bytes = payload.ToArray();
        using OwnMessages.Watch? watch = retain ? null : _ownMessages.Begin(bytes);
        MqttApplicationMessage message = new MqttApplicationMessageBuilder()
            .WithTopic(topic)
            .WithPayload(bytes)
            .WithRetainFlag(retain)
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .Build();
        await server.InjectApplicationMessage(
            new InjectedMqttApplicationMessage(message) { SenderClientId = "fermentwatch", CustomSessionItems = BrokerEvents.OurOwn },
            cancellationToken);
        return watch is null || await IsGotAsync(watch, cancellationToken);
    }

    private async Task<bool> IsGotAsync(OwnMessages.Watch watch, CancellationToken cancellationToken)
    {
        try
        {
            // The client has a clock of its own, so it is waited for by the machine's.
            return await watch.Got.WaitAsync(AnswerPatience, TimeProvider.System, cancellationToken);
        }
        catch (TimeoutException)
        {
            return false;
        }
    }

    /// <summary>Stops the broker if it runs.</summary>
    public async ValueTask DisposeAsync() => await StopAsync(CancellationToken.None);

    private List<ListenAt> Places(ServerCertificate? certificate)
    {
        IPAddress address = IPAddress.Parse(_options.BindAddress);
        var places = new List<ListenAt>();
        if (_options.PlainEnabled)
            places.Add(new ListenAt(new IPEndPoint(address, _options.Port), null));
        if (certificate is not null)
            places.Add(new ListenAt(new IPEndPoint(address, _options.TlsPort), certificate));
        return places;
    }

    private void NotePorts(IReadOnlyList<int> ports)
    {
        Port = _options.PlainEnabled ? ports[0] : null;
        TlsPort = _certificate is null ? null : ports[^1];
        if (Port is { } plain)
            BrokerLog.Listening(_logger, _options.BindAddress, plain);
        if (TlsPort is { } secured)
            BrokerLog.ListeningSecured(_logger, _options.BindAddress, secured);
    }

    private async Task CheckCredentialsAsync(MqttServer server, CancellationToken stopping)
    {
        using var timer = new PeriodicTimer(_options.CredentialCheckInterval, _time);
        try
        {
            while (await timer.WaitForNextTickAsync(stopping))
                await DisconnectWithdrawnAsync(server, stopping);
        }
        catch (OperationCanceledException)
        {
            // The broker stops.
        }
    }

    private async Task DisconnectWithdrawnAsync(MqttServer server, CancellationToken stopping)
    {
        try
        {
            foreach (string clientId in await _gate.WithdrawnAsync(stopping))
            {
                Counts.Count(RefusalReason.CredentialWithdrawn);
                BrokerLog.Withdrawn(_logger, BrokerEvents.NameOf(clientId));
                if ((await server.GetClientsAsync()).FirstOrDefault(client => client.Id == clientId) is { } client)
                    await client.DisconnectAsync(new MqttServerClientDisconnectOptions { ReasonCode = MqttDisconnectReasonCode.NotAuthorized });
            }
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            // Whatever failed, those connected stay until the next check; the loop must not end for it.
            BrokerLog.CheckFailed(_logger, exception);
        }
    }
}
