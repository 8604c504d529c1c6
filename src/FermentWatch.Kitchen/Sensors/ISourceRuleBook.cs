namespace FermentWatch.Kitchen.Sensors;

/// <summary>The record of rules for sensors that were not made for us.</summary>
public interface ISourceRuleBook
{
    /// <summary>All rules, in the order in which they were added.</summary>
    Task<IReadOnlyList<SourceRule>> AllAsync(CancellationToken cancellationToken);

    Task AddAsync(SourceRule rule, CancellationToken cancellationToken);

    /// <summary>Removes a rule; what it stored stays.</summary>
    Task RemoveAsync(Guid ruleId, CancellationToken cancellationToken);
}
