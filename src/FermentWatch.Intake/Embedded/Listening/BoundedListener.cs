using System.Collections.Concurrent;
using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using Microsoft.Extensions.Logging;
using MQTTnet.Adapter;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Formatter;
using MQTTnet.Implementations;
using MQTTnet.Server;

namespace FermentWatch.Intake.Embedded.Listening;

/// <summary>
/// Accepts connections for the broker. The library's own listener bounds neither how many wait half-open, nor the handshake of
/// TLS, nor the length of a packet; this one does.
/// </summary>
internal sealed class BoundedListener(
    IReadOnlyList<ListenAt> places, BrokerOptions options, BrokerCounts counts, FirstTimes said, TimeProvider time, ILogger logger)
    : IMqttServerAdapter
{
    /// <summary>Most connections that wait to be known.</summary>
    public const int WaitingPlaces = 512;

    // A stranger has no need for more than a user, a password and a last will.
    private const int LongestBeforeKnown = 16_384;

    // Topic and properties come on top of a payload. What is too large, but not by much, is read, so that it can be answered
    // with a reason; more ends the connection.
    private const int Overhead = 65_536;

    private const int Backlog = 512;
    private const int WriterBuffer = 4_096;
    private const int WriterBufferMost = 65_535;

    private readonly List<Socket> _listening = [];
    private readonly WaitingRoom<OpenConnection> _waiting = new(WaitingPlaces);
    private readonly ConcurrentDictionary<EndPoint, OpenConnection> _open = new();
    private readonly ConcurrentDictionary<Task, bool> _running = new();
    private CancellationTokenSource _stopping = new();
    private IMqttNetLogger _library = new MqttNetNullLogger();

    public Func<IMqttChannelAdapter, Task>? ClientHandler { get; set; }

    /// <summary>The ports it listens on, in the order of the places.</summary>
    public IReadOnlyList<int> Ports => [.. _listening.Select(socket => ((IPEndPoint)socket.LocalEndPoint!).Port)];

    public Task StartAsync(MqttServerOptions serverOptions, IMqttNetLogger library)
    {
        _library = library;
        _stopping = new CancellationTokenSource();
        foreach (ListenAt place in places)
        {
            var socket = new Socket(place.EndPoint.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
            if (place.EndPoint.Address.Equals(IPAddress.IPv6Any))
                socket.DualMode = true;
            _listening.Add(socket);
            socket.Bind(place.EndPoint);
            socket.Listen(Backlog);
            Track(AcceptAsync(socket, place, _stopping.Token));
        }
        return Task.CompletedTask;
    }

    public async Task StopAsync()
    {
        await _stopping.CancelAsync();
        foreach (Socket socket in _listening)
            socket.Dispose();
        foreach (OpenConnection connection in _open.Values)
            connection.Socket.Dispose();
        await Task.WhenAll(_running.Keys);
        _listening.Clear();
    }

    /// <summary>The connection from there is known now: it waits no longer and may send what a sensor may send.</summary>
    public void LetIn(EndPoint? remote)
    {
        if (remote is null || !_open.TryGetValue(remote, out OpenConnection? connection))
            return;
        _waiting.Leave(connection);
        connection.Limit.LongestBytes = (2 * options.MaxPayloadBytes) + Overhead;
    }

    public void Dispose() => _stopping.Dispose();

    private void Track(Task task)
    {
        _running[task] = true;
        task.ContinueWith(done => _running.TryRemove(done, out _), TaskScheduler.Default);
    }

    private async Task AcceptAsync(Socket listening, ListenAt place, CancellationToken stopping)
    {
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                Socket socket = await listening.AcceptAsync(stopping);
                Track(Task.Run(() => ServeAsync(socket, place, stopping), CancellationToken.None));
            }
            catch (SocketException exception) when (!stopping.IsCancellationRequested)
            {
                // No file handles left, say. Waiting a little keeps this from becoming a busy loop.
                if (said.IsFirst("accept"))
                    BrokerLog.AcceptFailed(logger, exception.Message);
                await Task.Delay(TimeSpan.FromMilliseconds(200), time, CancellationToken.None);
            }
            catch (Exception exception) when (exception is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private async Task ServeAsync(Socket socket, ListenAt place, CancellationToken stopping)
    {
        if (RemoteOf(socket) is not { } remote)
        {
            socket.Dispose();
            return;
        }
        var connection = new OpenConnection(socket, remote, new FrameLimit(LongestBeforeKnown));
        _open[remote] = connection;
        try
        {
            if (_waiting.Enter(connection) is { } oldest)
                TurnAway(oldest);
            socket.NoDelay = true;
            await using Stream stream = await OpenAsync(socket, place, stopping);
            if (ClientHandler is { } handler)
                await HandAsync(stream, connection, handler);
        }
        catch (Exception exception) when (exception is IOException or SocketException or ObjectDisposedException
            or AuthenticationException or OperationCanceledException)
        {
            // The other side left, or could not agree on TLS: its own affair.
        }
        finally
        {
            _waiting.Leave(connection);
            _open.TryRemove(remote, out _);
            socket.Dispose();
        }
    }

    private static EndPoint? RemoteOf(Socket socket)
    {
        try
        {
            return socket.RemoteEndPoint;
        }
        catch (SocketException)
        {
            // It was gone before we looked.
            return null;
        }
    }

    private async Task<Stream> OpenAsync(Socket socket, ListenAt place, CancellationToken stopping)
    {
        var plain = new NetworkStream(socket, ownsSocket: false);
        if (place.Certificate is not { } certificate)
            return plain;
        var secured = new SslStream(plain, leaveInnerStreamOpen: false);
        using var timeout = new CancellationTokenSource(options.ConnectTimeout, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(timeout.Token, stopping);
        await secured.AuthenticateAsServerAsync(
            new SslServerAuthenticationOptions
            {
                ServerCertificate = certificate.Current(),
                EnabledSslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13,
            },
            either.Token);
        return secured;
    }

    private async Task HandAsync(Stream stream, OpenConnection connection, Func<IMqttChannelAdapter, Task> handler)
    {
        var tcp = new MqttTcpChannel(stream, connection.Socket.LocalEndPoint!, connection.Remote, null);
        var channel = new GuardedChannel(tcp, connection.Limit, () => Refuse(connection.Remote, RefusalReason.PacketTooLong));
        var formatter = new MqttPacketFormatterAdapter(new MqttBufferWriter(WriterBuffer, WriterBufferMost));
        using var adapter = new OwnedClientIds(new MqttChannelAdapter(channel, formatter, _library));
        await handler(adapter);
    }

    private void TurnAway(OpenConnection connection)
    {
        Refuse(connection.Remote, RefusalReason.TooManyWaiting);
        connection.Socket.Dispose();
    }

    private void Refuse(EndPoint remote, RefusalReason reason)
    {
        counts.Count(reason);
        string address = (remote as IPEndPoint)?.Address.ToString() ?? "unknown";
        if (said.IsFirst($"{address} {reason}"))
            BrokerLog.ConnectionCut(logger, address, reason);
    }
}
