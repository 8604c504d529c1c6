namespace FermentWatch.Kitchen.Publishing;

/// <summary>The way out to those who listen on a broker: ours, one that the household has, or both.</summary>
public interface IMessageOutlet
{
    /// <summary>Publishes once.</summary>
    /// <param name="topic">The topic, no wildcard in it.</param>
    /// <param name="payload">The bytes; none with <paramref name="retain"/> takes back what was retained.</param>
    /// <param name="retain">Whether those who subscribe later get it too.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    /// <returns>
    /// False where a broker that should have it cannot be reached at present, or where nobody got what is not retained: on our own
    /// broker, which keeps nothing for those who are away.
    /// </returns>
    Task<bool> PublishAsync(string topic, ReadOnlyMemory<byte> payload, bool retain, CancellationToken cancellationToken);
}

/// <summary>The record of topics on which a home hub was told of us: without it nobody could take back what a broker keeps.</summary>
public interface IAnnouncementBook
{
    /// <summary>The topics.</summary>
    Task<IReadOnlyList<string>> TopicsAsync(CancellationToken cancellationToken);

    /// <summary>Notes topics before anything is published on them; those known already stay.</summary>
    Task AddAsync(IReadOnlyCollection<string> topics, CancellationToken cancellationToken);

    /// <summary>Strikes off topics from which the announcement was taken back.</summary>
    Task RemoveAsync(IReadOnlyCollection<string> topics, CancellationToken cancellationToken);
}
