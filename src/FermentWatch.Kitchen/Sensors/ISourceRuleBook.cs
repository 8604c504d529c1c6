namespace FermentWatch.Kitchen.Sensors;

/// <summary>The record of rules for sensors that were not made for us.</summary>
public interface ISourceRuleBook
{
    /// <summary>All rules, in the order in which they were added.</summary>
    Task<IReadOnlyList<SourceRule>> AllAsync(CancellationToken cancellationToken);

    /// <summary>Adds a rule; where it narrows what is plausible, what its sensor has in the log is to be judged again.</summary>
    Task AddAsync(SourceRule rule, CancellationToken cancellationToken);

    /// <summary>Removes a rule; what it stored stays, and is to be judged again without it. False if there is no such rule.</summary>
    Task<bool> RemoveAsync(Guid ruleId, CancellationToken cancellationToken);

    /// <summary>Which rule has fed which sensor.</summary>
    Task<IReadOnlyList<SourceFeed>> FeedsAsync(CancellationToken cancellationToken);

    /// <summary>Notes that a rule feeds a sensor; noting it again, or of a rule that is gone, changes nothing.</summary>
    Task NoteFeedAsync(SourceFeed feed, CancellationToken cancellationToken);
}
