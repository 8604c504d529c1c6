namespace FermentWatch.Kitchen.States;

/// <summary>The way out to those who listen on a broker.</summary>
public interface IMessageOutlet
{
    /// <summary>Publishes once.</summary>
    /// <param name="topic">The topic, no wildcard in it.</param>
    /// <param name="payload">The bytes.</param>
    /// <param name="retain">Whether those who subscribe later get it too.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    /// <exception cref="InvalidOperationException">No broker runs.</exception>
    Task PublishAsync(string topic, ReadOnlyMemory<byte> payload, bool retain, CancellationToken cancellationToken);
}
