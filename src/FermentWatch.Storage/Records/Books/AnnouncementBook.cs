using FermentWatch.Kitchen.Publishing;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IAnnouncementBook"/>
internal sealed class AnnouncementBook(IDbContextFactory<RecordsContext> contexts) : IAnnouncementBook
{
    public async Task<IReadOnlyList<string>> TopicsAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Announcements.AsNoTracking().Select(each => each.Topic).OrderBy(topic => topic).ToListAsync(cancellationToken);
    }

    public async Task AddAsync(IReadOnlyCollection<string> topics, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        var known = await context.Announcements.Select(each => each.Topic).ToListAsync(cancellationToken);
        context.Announcements.AddRange(topics.Except(known).Select(topic => new Announcement { Topic = topic }));
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    public async Task RemoveAsync(IReadOnlyCollection<string> topics, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.Announcements.Where(each => topics.Contains(each.Topic)).ExecuteDeleteAsync(cancellationToken);
    }
}
