using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Tests.Doubles;

/// <summary>A record of source rules in memory.</summary>
public sealed class MemorySourceRuleBook : ISourceRuleBook
{
    private readonly Lock _gate = new();
    private readonly List<SourceRule> _rules = [];
    private readonly List<SourceFeed> _feeds = [];
    private int _queries;

    /// <summary>How often the rules were read.</summary>
    public int Queries => _queries;

    public Task<IReadOnlyList<SourceRule>> AllAsync(CancellationToken cancellationToken)
    {
        Interlocked.Increment(ref _queries);
        lock (_gate)
            return Task.FromResult<IReadOnlyList<SourceRule>>([.. _rules]);
    }

    public Task AddAsync(SourceRule rule, CancellationToken cancellationToken)
    {
        lock (_gate)
            _rules.Add(rule);
        return Task.CompletedTask;
    }

    public Task<bool> RemoveAsync(Guid ruleId, CancellationToken cancellationToken)
    {
        lock (_gate)
            return Task.FromResult(_rules.RemoveAll(rule => rule.Id == ruleId) > 0);
    }

    public Task<IReadOnlyList<SourceFeed>> FeedsAsync(CancellationToken cancellationToken)
    {
        lock (_gate)
            return Task.FromResult<IReadOnlyList<SourceFeed>>([.. _feeds]);
    }

    public Task NoteFeedAsync(SourceFeed feed, CancellationToken cancellationToken)
    {
        lock (_gate)
            _feeds.Add(feed);
        return Task.CompletedTask;
    }
}
