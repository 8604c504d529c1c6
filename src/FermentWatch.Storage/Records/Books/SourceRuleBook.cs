using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Records.Tables;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="ISourceRuleBook"/>
internal sealed class SourceRuleBook(IDbContextFactory<RecordsContext> contexts) : ISourceRuleBook
{
    public async Task<IReadOnlyList<SourceRule>> AllAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.SourceRules.AsNoTracking()
            .OrderBy(rule => EF.Property<int>(rule, SourceRuleTable.Position)).ToListAsync(cancellationToken);
    }

    public async Task AddAsync(SourceRule rule, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        int last = await context.SourceRules.MaxAsync(each => (int?)EF.Property<int>(each, SourceRuleTable.Position), cancellationToken) ?? 0;
        context.SourceRules.Add(rule).Property<int>(SourceRuleTable.Position).CurrentValue = last + 1;
        await OrderAsync(context, rule, [], cancellationToken);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    public async Task<bool> RemoveAsync(Guid ruleId, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        if (await context.SourceRules.SingleOrDefaultAsync(each => each.Id == ruleId, cancellationToken) is not { } rule)
            return false;
        var fed = await context.SourceFeeds.Where(feed => feed.RuleId == ruleId).Select(feed => feed.SensorId).ToListAsync(cancellationToken);
        await OrderAsync(context, rule, fed, cancellationToken);
        context.SourceRules.Remove(rule);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return true;
    }

    public async Task<IReadOnlyList<SourceFeed>> FeedsAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.SourceFeeds.AsNoTracking().ToListAsync(cancellationToken);
    }

    public async Task NoteFeedAsync(SourceFeed feed, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        var rule = await context.SourceRules.SingleOrDefaultAsync(each => each.Id == feed.RuleId, cancellationToken);
        if (rule is null || await context.SourceFeeds.AnyAsync(each => each == feed, cancellationToken))
            return;
        context.SourceFeeds.Add(feed);
        if (rule.SensorSlug is null)
            await OrderAsync(context, rule, [feed.SensorId], cancellationToken);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    /// <summary>What a rule that narrows the plausible range changes for sensors is to be judged again.</summary>
    private static async Task OrderAsync(RecordsContext context, SourceRule rule, IReadOnlyCollection<Guid> fed, CancellationToken cancellationToken)
    {
        if (rule.PlausibleLow is null && rule.PlausibleHigh is null)
            return;
        var sensors = await context.Sensors
            .Where(sensor => fed.Contains(sensor.Id) || (sensor.Slug == rule.SensorSlug && sensor.RemovedAt == null))
            .Select(sensor => sensor.Id).ToListAsync(cancellationToken);
        context.RejudgeOrders.AddRange(sensors.Select(id =>
            new RejudgeOrder { Id = Guid.CreateVersion7(), SensorId = id, Quantity = rule.Quantity }));
    }
}

/// <inheritdoc cref="IRejudgeBook"/>
internal sealed class RejudgeBook(IDbContextFactory<RecordsContext> contexts) : IRejudgeBook
{
    public async Task<IReadOnlyList<RejudgeOrder>> PendingAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.RejudgeOrders.AsNoTracking().OrderBy(order => order.Id).ToListAsync(cancellationToken);
    }

    public async Task DoneAsync(Guid orderId, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.RejudgeOrders.Where(order => order.Id == orderId).ExecuteDeleteAsync(cancellationToken);
    }
}
