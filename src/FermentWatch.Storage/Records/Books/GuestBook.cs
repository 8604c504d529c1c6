using FermentWatch.Kitchen.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IGuestBook"/>
internal sealed class GuestBook(IDbContextFactory<RecordsContext> contexts) : IGuestBook
{
    public async Task AddAsync(GuestLink link, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.GuestLinks.Add(link);
        await context.SaveChangesAsync(cancellationToken);
    }

    public async Task<GuestLink?> FindAsync(string secretHash, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.GuestLinks.AsNoTracking().SingleOrDefaultAsync(link => link.SecretHash == secretHash, cancellationToken);
    }

    public async Task<IReadOnlyList<GuestLink>> OpenAsync(Instant now, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.GuestLinks.AsNoTracking().Where(link => link.WithdrawnAt == null && link.ExpiresAt > now)
            .OrderBy(link => link.ExpiresAt).ToListAsync(cancellationToken);
    }

    public async Task WithdrawAsync(Guid id, Instant now, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.GuestLinks.Where(link => link.Id == id && link.WithdrawnAt == null)
            .ExecuteUpdateAsync(row => row.SetProperty(link => link.WithdrawnAt, now), cancellationToken);
    }
}
