namespace FermentWatch.Kitchen.States;

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
