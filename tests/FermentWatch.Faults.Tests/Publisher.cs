using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using MQTTnet;
using MQTTnet.Protocol;

namespace FermentWatch.Faults.Tests;

/// <summary>
/// Publishes as fast as it is acknowledged, with a window under way: in turn a bare number and a pack with an absolute time, each
/// with a number of its own as its value. What was not acknowledged when the connection broke is sent again.
/// </summary>
internal sealed class Publisher(int port, string user, string password) : IAsyncDisposable
{
    private const int Window = 40;
    private const long FirstSecond = 1_790_000_000;

    private readonly CancellationTokenSource _ending = new();
    private readonly ConcurrentQueue<int> _again = new();
    private Task _running = Task.CompletedTask;
    private int _next;
    private volatile int _last = int.MaxValue;

    /// <summary>Everything sent so far. Even numbers are bare, odd ones carry their time.</summary>
    public ConcurrentDictionary<int, Sent> Numbers { get; } = new();

    public static bool IsTimed(int number) => number % 2 == 1;

    /// <summary>The second of the Unix epoch at which an odd number says that it was measured.</summary>
    public static long SecondOf(int number) => FirstSecond + number;

    /// <summary>
    /// Lets no more than so many new numbers out until it is called again. An outside broker takes everything while nobody reads;
    /// beyond what its queue holds it refuses, and long before it does little else than save the queue at each change.
    /// </summary>
    public void Allow(int more) => _last = Volatile.Read(ref _next) + more;

    public void Start() => _running = Task.Run(RunAsync);

    /// <summary>Ends when all that was sent is acknowledged.</summary>
    public async Task FinishAsync()
    {
        await _ending.CancelAsync();
        await _running.WaitAsync(TimeSpan.FromMinutes(3), TimeProvider.System);
    }

    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync();
        _ending.Dispose();
    }

    private async Task RunAsync()
    {
        while (!_ending.IsCancellationRequested || !_again.IsEmpty)
        {
            try
            {
                await ConnectAndSendAsync();
            }
            catch (Exception exception) when (exception is MQTTnet.Exceptions.MqttCommunicationException or OperationCanceledException)
            {
                // The host is down: it will be back.
                await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
            }
        }
    }

    private async Task ConnectAndSendAsync()
    {
        using IMqttClient client = new MqttClientFactory().CreateMqttClient();
        var options = new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithClientId("publisher").WithTimeout(TimeSpan.FromSeconds(5));
        if (user.Length > 0)
            options = options.WithCredentials(user, password);
        if ((await client.ConnectAsync(options.Build())).ResultCode != MqttClientConnectResultCode.Success)
            return;
        using var window = new SemaphoreSlim(Window);
        var underWay = new List<Task>();
        while (client.IsConnected && (!_ending.IsCancellationRequested || !_again.IsEmpty))
        {
            while (_again.IsEmpty && _next >= _last && client.IsConnected && !_ending.IsCancellationRequested)
                await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
            await window.WaitAsync();
            int number = _again.TryDequeue(out int again) ? again : Interlocked.Increment(ref _next);
            underWay.Add(SendAsync(client, number, window));
            underWay.RemoveAll(task => task.IsCompleted);
        }
        await Task.WhenAll(underWay);
    }

    private async Task SendAsync(IMqttClient client, int number, SemaphoreSlim window)
    {
        Sent sent = Numbers.GetOrAdd(number, _ => new Sent());
        try
        {
            sent.Again();
            MqttClientPublishResult result = await client.PublishAsync(Message(number));
            if (result.IsSuccess)
                sent.Acknowledge();
        }
        catch (Exception exception) when (exception is MQTTnet.Exceptions.MqttCommunicationException or OperationCanceledException)
        {
            // Broken under way: whether it arrived is not known.
        }
        finally
        {
            if (!sent.IsAcknowledged)
                _again.Enqueue(number);
            window.Release();
        }
    }

    private static MqttApplicationMessage Message(int number)
    {
        string payload = IsTimed(number)
            ? string.Create(CultureInfo.InvariantCulture, $"[{{\"n\":\"cellar\",\"u\":\"Cel\",\"t\":{SecondOf(number)},\"v\":{number}}}]")
            : number.ToString(CultureInfo.InvariantCulture);
        return new MqttApplicationMessageBuilder()
            .WithTopic(IsTimed(number) ? "fermentwatch/sensor/cellar" : "fermentwatch/sensor/cellar/millivolts")
            .WithPayload(Encoding.ASCII.GetBytes(payload))
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .Build();
    }
}
