using FermentWatch.Kitchen.Calendar;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="ICalendarFeedBook"/>
internal sealed class CalendarFeedBook(IDbContextFactory<RecordsContext> contexts) : ICalendarFeedBook
{
    public async Task<CalendarFeed?> OfAsync(string person, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Set<CalendarFeed>().AsNoTracking().FirstOrDefaultAsync(feed => feed.Person == person, cancellationToken);
    }

    public async Task<CalendarFeed?> FindAsync(string secret, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Set<CalendarFeed>().AsNoTracking()
            .FirstOrDefaultAsync(feed => feed.Secret == secret && context.Users.Any(account => account.DisplayName == feed.Person),
                cancellationToken);
    }

    public async Task RenewAsync(CalendarFeed feed, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.Set<CalendarFeed>().Where(each => each.Person == feed.Person).ExecuteDeleteAsync(cancellationToken);
        context.Add(feed);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }
}
