using System.Collections.Concurrent;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Storage.Records.Derived;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IForecastBook"/>
internal sealed class ForecastBook(IDbContextFactory<RecordsContext> contexts) : IForecastBook
{
    /// <summary>
    /// What was read last of each jar; no forecast where it is in a form no longer read. A thousand forecasts take half a second to read, and
    /// rounds, occasions and pages ask for all of them.
    /// </summary>
    private readonly ConcurrentDictionary<Guid, (Instant AsOf, string Inputs, JarForecast? Forecast)> _read = [];

    public async Task SaveAsync(IReadOnlyList<JarForecast> forecasts, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        foreach (var forecast in forecasts)
        {
            var row = ForecastRow.Of(forecast);
            var mark = ForecastMarkRow.Of(forecast);
            bool hasRow = await context.Forecasts.AnyAsync(each => each.JarId == row.JarId, cancellationToken);
            bool hasMark = await context.ForecastMarks.AnyAsync(each => each.JarId == mark.JarId && each.Day == mark.Day, cancellationToken);
            context.Entry(row).State = hasRow ? EntityState.Modified : EntityState.Added;
            context.Entry(mark).State = hasMark ? EntityState.Modified : EntityState.Added;
        }

        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    public async Task<IReadOnlyList<JarForecast>> LatestAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var heads = await context.Forecasts.Select(row => new { row.JarId, row.AsOf, row.Inputs }).ToListAsync(cancellationToken);
        Guid[] unread = [.. heads.Where(head => !_read.TryGetValue(head.JarId, out var known) || (known.AsOf, known.Inputs) != (head.AsOf, head.Inputs)).Select(head => head.JarId)];
        if (unread.Length > 0)
            foreach (ForecastRow row in await context.Forecasts.AsNoTracking().Where(row => unread.Contains(row.JarId)).ToListAsync(cancellationToken))
                _read[row.JarId] = (row.AsOf, row.Inputs, row.Read());
        foreach (Guid gone in _read.Keys.Except(heads.Select(head => head.JarId)))
            _read.TryRemove(gone, out _);
        return [.. heads.Select(head => _read.GetValueOrDefault(head.JarId).Forecast).OfType<JarForecast>()];
    }

    public async Task<JarForecast?> LatestAsync(Guid jarId, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return (await context.Forecasts.AsNoTracking().SingleOrDefaultAsync(row => row.JarId == jarId, cancellationToken))?.Read();
    }

    public async Task<IReadOnlyList<ForecastMark>> MarksAsync(Guid jarId, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var rows = await context.ForecastMarks.AsNoTracking()
            .Where(row => row.JarId == jarId).OrderBy(row => row.Day).ToListAsync(cancellationToken);
        return rows.ConvertAll(row => row.Read());
    }
}
