using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Tests.Doubles;

/// <summary>A record of source rules in memory.</summary>
public sealed class MemorySourceRuleBook : ISourceRuleBook
{
    private readonly Lock _gate = new();
    private readonly List<SourceRule> _rules = [];
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

    public Task RemoveAsync(Guid ruleId, CancellationToken cancellationToken)
    {
        lock (_gate)
            _rules.RemoveAll(rule => rule.Id == ruleId);
        return Task.CompletedTask;
    }
}
