using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Probes;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IProbeBook"/>
internal sealed class ProbeBook(IDbContextFactory<RecordsContext> contexts) : IProbeBook
{
    public async Task<IReadOnlyList<ProbeCheck>> AllAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.ProbeChecks.AsNoTracking().OrderBy(check => check.At).ThenBy(check => check.Id).ToListAsync(cancellationToken);
    }

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
}
