using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Storage.Records.Derived;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IForecastBook"/>
internal sealed class ForecastBook(IDbContextFactory<RecordsContext> contexts) : IForecastBook
{
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
        var rows = await context.Forecasts.AsNoTracking().ToListAsync(cancellationToken);
        return [.. rows.Select(row => row.Read()).OfType<JarForecast>()];
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
