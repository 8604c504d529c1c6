using System.Security.Cryptography;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Sources;
using FermentWatch.Kitchen.Topics;
using Microsoft.Extensions.Logging;
using MQTTnet;
using MQTTnet.Exceptions;

namespace FermentWatch.Intake.Outside;

/// <summary>
/// The link to a broker that the household already has. It keeps a session there under a fixed client id, so that what is
/// published while we are away waits for us, and acknowledges what is stored. An absent broker stops nothing: the link tries
/// again until it is there.
/// </summary>
public sealed class OutsideLink : IAsyncDisposable
{
    private static readonly TimeSpan _lookForRulesEvery = TimeSpan.FromSeconds(10);

    private static readonly TimeSpan _wellAfter = TimeSpan.FromSeconds(10);

    private readonly OutsideBrokerOptions _options;
    private readonly MessageDoor _door;
    private readonly SourceRuleSet? _sources;
    private readonly TimeProvider _time;
    private readonly ILogger<OutsideLink> _logger;
    private CancellationTokenSource? _stopping;
    private Task _running = Task.CompletedTask;
    private volatile LinkSession? _session;

    /// <summary>Makes a link that does not run yet.</summary>
    /// <exception cref="ArgumentException">At least one setting is wrong; the message names all that are.</exception>
    public OutsideLink(OutsideBrokerOptions options, MessageDoor door, SourceRuleSet? sources, TimeProvider time, ILogger<OutsideLink> logger)
    {
        options.ThrowIfWrong();
        (_options, _door, _sources, _time, _logger) = (options, door, sources, time, logger);
    }

    /// <summary>What it went through.</summary>
    public LinkCounts Counts { get; } = new();

    /// <summary>Whether it is connected with its subscriptions in place.</summary>
    public bool IsConnected => _session?.IsConnected ?? false;

    /// <summary>Why it is not connected, in one sentence; null while it is.</summary>
    public string? Problem { get; private set; } = "It has not been tried yet.";

    /// <summary>Raised on each connection, once its subscriptions are in place: what is retained is to be said again.</summary>
    public event Action? Connected;

    /// <summary>Starts to connect, and goes on until <see cref="StopAsync"/>; does not wait for a connection.</summary>
    /// <exception cref="CryptographicException">A certificate file is none.</exception>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        MqttClientOptions clientOptions = LinkClientOptions.Of(_options);
        _stopping = new CancellationTokenSource();
        _running = Task.Run(() => RunAsync(clientOptions, _stopping.Token), CancellationToken.None);
        return Task.CompletedTask;
    }

    /// <summary>Lets running commits end and leaves the broker, which goes on to keep messages for us.</summary>
    public async Task StopAsync(CancellationToken cancellationToken)
    {
        if (_stopping is null)
            return;
        await _stopping.CancelAsync();
        await _running.WaitAsync(cancellationToken);
        _stopping.Dispose();
        _stopping = null;
    }

    /// <summary>Publishes something of our own; false if there is no connection to publish it on.</summary>
    public async Task<bool> PublishAsync(string topic, ReadOnlyMemory<byte> payload, bool retain, CancellationToken cancellationToken)
    {
        if (_session is not { IsConnected: true } session)
            return false;
        try
        {
            await session.PublishAsync(topic, payload, retain, cancellationToken);
            return true;
        }
        catch (Exception exception) when (exception is MqttCommunicationException or IOException or ObjectDisposedException)
        {
            return false;
        }
    }

    /// <summary>Stops the link if it runs.</summary>
    public async ValueTask DisposeAsync() => await StopAsync(CancellationToken.None);

    private async Task RunAsync(MqttClientOptions clientOptions, CancellationToken stopping)
    {
        int failures = 0;
        while (!stopping.IsCancellationRequested)
        {
            LinkAttempt attempt = await ServeOnceAsync(clientOptions, stopping);
            if (stopping.IsCancellationRequested)
                return;
            // A connection that held for a while shows that the broker is well: the next failure is a first one.
            failures = attempt.Held ? 1 : failures + 1;
            if (Problem is null || failures == 1)
                LinkLog.Lost(_logger, _options.Host, _options.Port, attempt.Problem);
            Problem = attempt.Problem;
            await WaitAsync(ReconnectBackoff.Wait(failures, Chance()), stopping);
            if (await WasAbsentAsync(stopping))
                failures = 0;
        }
    }

    /// <summary>Looks until somebody is there; whether nobody was at first.</summary>
    private async Task<bool> WasAbsentAsync(CancellationToken stopping)
    {
        bool absent = false;
        while (await BrokerPresence.WhyAbsentAsync(_options, _time, stopping) is { } problem)
        {
            (absent, Problem) = (true, problem);
            await WaitAsync(ReconnectBackoff.LookAgain(Chance()), stopping);
        }
        return absent;
    }

    private static double Chance() => RandomNumberGenerator.GetInt32(1_000) / 1_000.0;

    private async Task<LinkAttempt> ServeOnceAsync(MqttClientOptions clientOptions, CancellationToken stopping)
    {
        Counts.CountAttempt();
        using var session = new LinkSession(_door, Counts, _time);
        long? since = null;
        try
        {
            MqttClientConnectResult result = await session.ConnectAsync(clientOptions, stopping);
            if (result.ResultCode != MqttClientConnectResultCode.Success)
                return new LinkAttempt($"It refuses us: {result.ResultCode}.", false);
            await SubscribeAsync(session, stopping);
            await session.PublishAsync(OwnTopics.ServiceStatus, "online"u8.ToArray(), retain: true, stopping);
            _session = session;
            Counts.CountConnect();
            LinkLog.Connected(_logger, _options.Host, _options.Port, result.IsSessionPresent);
            Problem = null;
            Connected?.Invoke();
            since = _time.GetTimestamp();
            await ServeAsync(session, stopping);
            return new LinkAttempt("The connection ended.", Held(since));
        }
        catch (IOException exception)
        {
            LinkLog.NotStored(_logger, exception);
            return new LinkAttempt(exception.Message, false);
        }
        catch (Exception exception)
        {
            // Whatever it was, the link must outlive it. It is told as the link's problem, and logged when that changes.
            return new LinkAttempt($"{exception.GetBaseException().Message.TrimEnd('.')}.", Held(since));
        }
        finally
        {
            _session = null;
            await session.DisconnectAsync();
        }
    }

    /// <summary>Takes messages in, and looks now and then whether the rules ask for other topics.</summary>
    private async Task ServeAsync(LinkSession session, CancellationToken stopping)
    {
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        Task watching = WatchRulesAsync(session, ended.Token);
        try
        {
            await session.RunAsync(stopping);
        }
        finally
        {
            await ended.CancelAsync();
            await watching;
        }
    }

    private async Task WatchRulesAsync(LinkSession session, CancellationToken ended)
    {
        using var timer = new PeriodicTimer(_lookForRulesEvery, _time);
        try
        {
            while (await timer.WaitForNextTickAsync(ended))
                await SubscribeAsync(session, ended);
        }
        catch (Exception exception) when (exception is OperationCanceledException or MqttCommunicationException or InvalidOperationException)
        {
            // The connection ends, and with it this watch; the next one begins with all topics.
        }
    }

    private async Task SubscribeAsync(LinkSession session, CancellationToken cancellationToken)
    {
        IReadOnlyList<string> ruled = _sources is null ? [] : await _sources.FiltersAsync(cancellationToken);
        string[] wanted = [$"{OwnTopics.Sensors}#", OwnTopics.JarButtons, .. ruled, .. _options.Discover()];
        foreach ((string filter, string answer) in await session.SubscribeAsync(FilterSet.Disjoint(wanted), wanted, cancellationToken))
            LinkLog.SubscriptionRefused(_logger, filter, answer);
    }

    private async Task WaitAsync(TimeSpan wait, CancellationToken stopping)
    {
        try
        {
            await Task.Delay(wait, _time, stopping);
        }
        catch (OperationCanceledException)
        {
            // The link stops.
        }
    }

    // A broker that lets us in and throws us out at once is not well, and the waits must grow.
    private bool Held(long? since) => since is { } start && _time.GetElapsedTime(start) >= _wellAfter;
}
