using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Probes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IProbeBook"/>
internal sealed class ProbeBook(IDbContextFactory<RecordsContext> contexts) : IProbeBook
{
    public Task<IReadOnlyList<ProbeCheck>> StandingAsync(CancellationToken cancellationToken) =>
        ReadAsync(checks => checks.Where(check => check.VoidedAt == null), cancellationToken);

    public Task<IReadOnlyList<ProbeCheck>> FiledAsync(Guid sensorId, CancellationToken cancellationToken) =>
        ReadAsync(checks => checks.Where(check => check.SensorId == sensorId), cancellationToken);

    public async Task AddAsync(ProbeCheck check, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        if (await context.ProbeChecks.AnyAsync(each => each.Id == check.Id, cancellationToken))
            return;
        context.ProbeChecks.Add(check);
        context.RejudgeOrders.Add(new RejudgeOrder { Id = Guid.CreateVersion7(), SensorId = check.SensorId });
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    public async Task<bool> TakeBackAsync(Guid checkId, Instant at, string by, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        ProbeCheck check = await context.ProbeChecks.SingleAsync(each => each.Id == checkId, cancellationToken);
        if (check.VoidedAt is not null)
            return false;
        (check.VoidedAt, check.VoidedBy) = (at, by);
        context.RejudgeOrders.Add(new RejudgeOrder { Id = Guid.CreateVersion7(), SensorId = check.SensorId });
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return true;
    }

    private async Task<IReadOnlyList<ProbeCheck>> ReadAsync(
        Func<IQueryable<ProbeCheck>, IQueryable<ProbeCheck>> which, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await which(context.ProbeChecks.AsNoTracking()).OrderBy(check => check.At).ThenBy(check => check.Id).ToListAsync(cancellationToken);
    }
}
