using FermentWatch.Kitchen.Notices;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <summary>Putting notices into the outbox within a transaction of the caller's.</summary>
internal static class Outbox
{
    /// <summary>Adds, not yet saved, those whose key is not there.</summary>
    internal static async Task QueueAsync(RecordsContext context, IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        string[] keys = [.. notices.Select(notice => notice.Key)];
        var known = await context.Notices
            .Where(notice => keys.Contains(notice.Key)).Select(notice => notice.Key).ToListAsync(cancellationToken);
        context.Notices.AddRange(notices.DistinctBy(notice => notice.Key).ExceptBy(known, notice => notice.Key));
    }
}
