using System.Collections.Concurrent;
using MQTTnet;
using MQTTnet.Server;

namespace FermentWatch.Intake.Embedded;

/// <summary>Which of the messages we publish ourselves found somebody who listens.</summary>
internal sealed class OwnMessages
{
    private readonly ConcurrentDictionary<MqttApplicationMessage, Watch> _underWay = new(ReferenceEqualityComparer.Instance);

    public void AttachTo(MqttServer server) => server.ApplicationMessageNotConsumedAsync += OnNotConsumedAsync;

    /// <summary>Begins to watch over a message, until the watch is disposed of.</summary>
    public Watch Begin(MqttApplicationMessage message) => _underWay[message] = new Watch(this, message);

    private Task OnNotConsumedAsync(ApplicationMessageNotConsumedEventArgs missed)
    {
        if (_underWay.TryGetValue(missed.ApplicationMessage, out Watch? watch))
            watch.Heard = false;
        return Task.CompletedTask;
    }

    /// <summary>The watch over one message.</summary>
    public sealed class Watch(OwnMessages all, MqttApplicationMessage message) : IDisposable
    {
        /// <summary>True unless the broker found no subscription of a client for it.</summary>
        public bool Heard { get; set; } = true;

        public void Dispose() => all._underWay.TryRemove(message, out _);
    }
}
