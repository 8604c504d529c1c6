using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Storage.Records.Derived;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IForecastBook"/>
/// <remarks>
/// The latest are kept in memory, as rounds, occasions and pages ask for all of them. On the disk is what a restart needs to have
/// something to show at once: a forecast is written there when facts change, and otherwise a few times a day, for a card that lives
/// on being written little.
/// </remarks>
internal sealed class ForecastBook(IDbContextFactory<RecordsContext> contexts) : IForecastBook, IDisposable
{
    private static readonly Duration WrittenEvery = Duration.FromHours(6);

    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Dictionary<Guid, (string Facts, Instant AsOf)> _written = [];
    private volatile IReadOnlyDictionary<Guid, JarForecast>? _latest;

    public async Task SaveAsync(IReadOnlyList<RenewedForecast> renewed, CancellationToken cancellationToken)
    {
        await _turn.WaitAsync(cancellationToken);
        try
        {
            var latest = new Dictionary<Guid, JarForecast>(_latest ?? await ReadAsync(cancellationToken));
            List<JarForecast> taken = [.. renewed.Where(each =>
                latest.GetValueOrDefault(each.Forecast.JarId)?.Inputs == each.Replaces).Select(each => each.Forecast)];
            await WriteAsync([.. taken.Where(IsToBeWritten)], cancellationToken);
            foreach (JarForecast forecast in taken)
                latest[forecast.JarId] = forecast;
            _latest = latest;
        }
        finally
        {
            _turn.Release();
        }
    }

    public async Task ForgetAsync(IReadOnlyList<Guid> jars, CancellationToken cancellationToken)
    {
        await _turn.WaitAsync(cancellationToken);
        try
        {
            var latest = new Dictionary<Guid, JarForecast>(_latest ?? await ReadAsync(cancellationToken));
            await using var context = await contexts.CreateDbContextAsync(cancellationToken);
            await context.Forecasts.Where(row => jars.Contains(row.JarId)).ExecuteDeleteAsync(cancellationToken);
            foreach (Guid jar in jars)
            {
                latest.Remove(jar);
                _written.Remove(jar);
            }
            _latest = latest;
        }
        finally
        {
            _turn.Release();
        }
    }

    public async Task<IReadOnlyList<JarForecast>> LatestAsync(CancellationToken cancellationToken) =>
        [.. (await AllAsync(cancellationToken)).Values];

    public async Task<JarForecast?> LatestAsync(Guid jarId, CancellationToken cancellationToken) =>
        (await AllAsync(cancellationToken)).GetValueOrDefault(jarId);

    public async Task<ILookup<Guid, ForecastMark>> MarksAsync(IReadOnlyCollection<Guid> jars, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var rows = await context.ForecastMarks.AsNoTracking()
            .Where(row => jars.Contains(row.JarId)).OrderBy(row => row.Day).ToListAsync(cancellationToken);
        return rows.ToLookup(row => row.JarId, row => row.Read());
    }

    public void Dispose() => _turn.Dispose();

    private async Task<IReadOnlyDictionary<Guid, JarForecast>> AllAsync(CancellationToken cancellationToken)
    {
        if (_latest is { } known)
            return known;
        await _turn.WaitAsync(cancellationToken);
        try
        {
            return _latest ??= await ReadAsync(cancellationToken);
        }
        finally
        {
            _turn.Release();
        }
    }

    private async Task<Dictionary<Guid, JarForecast>> ReadAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var read = (await context.Forecasts.AsNoTracking().ToListAsync(cancellationToken)).Select(row => row.Read()).OfType<JarForecast>().ToList();
        foreach (JarForecast forecast in read)
            _written[forecast.JarId] = (forecast.Facts, forecast.AsOf);
        return read.ToDictionary(forecast => forecast.JarId);
    }

    private bool IsToBeWritten(JarForecast forecast) =>
        !_written.TryGetValue(forecast.JarId, out var written) || written.Facts != forecast.Facts
        || written.AsOf.InUtc().Date != forecast.AsOf.InUtc().Date || forecast.AsOf - written.AsOf >= WrittenEvery;

    private async Task WriteAsync(IReadOnlyList<JarForecast> forecasts, CancellationToken cancellationToken)
    {
        if (forecasts.Count == 0)
            return;
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        Guid[] jars = [.. forecasts.Select(forecast => forecast.JarId)];
        var rows = (await context.Forecasts.Where(row => jars.Contains(row.JarId)).Select(row =>
            row.JarId).ToListAsync(cancellationToken)).ToHashSet();
        var marks = (await context.ForecastMarks.Where(row => jars.Contains(row.JarId)).GroupBy(row => row.JarId)
            .Select(each => new { JarId = each.Key, Day = each.Max(row => row.Day) }).ToListAsync(cancellationToken)).ToDictionary(each =>
                each.JarId, each => each.Day);
        foreach (JarForecast forecast in forecasts)
        {
            ForecastMarkRow mark = ForecastMarkRow.Of(forecast);
            context.Entry(ForecastRow.Of(forecast)).State = rows.Contains(forecast.JarId) ? EntityState.Modified : EntityState.Added;
            bool hasMark = marks.TryGetValue(forecast.JarId, out LocalDate last) && (last == mark.Day
                || (last > mark.Day && await context.ForecastMarks.AnyAsync(row =>
                    row.JarId == mark.JarId && row.Day == mark.Day, cancellationToken)));
            context.Entry(mark).State = hasMark ? EntityState.Modified : EntityState.Added;
        }
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        foreach (JarForecast forecast in forecasts)
            _written[forecast.JarId] = (forecast.Facts, forecast.AsOf);
    }
}
