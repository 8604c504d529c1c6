using FermentWatch.Kitchen.Judging;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

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
