using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Storage.Records.Tables;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IJarBook"/>
internal sealed class JarBook(IDbContextFactory<RecordsContext> contexts) : IJarBook
{
    private Kept? _kept;
    private Ended? _ended;

    /// <summary>
    /// Every page and every loop asks for these: they are read again only once facts have changed, and then only the jars that changed,
    /// so that an entry costs its own jar and not every observation of every other.
    /// </summary>
    public async Task<IReadOnlyList<Jar>> KeptAsync(CancellationToken cancellationToken) => await InOneMomentAsync(async context =>
    {
        long facts = await FactsAsync(context, cancellationToken);
        if (_kept is not { } kept || kept.Facts != facts)
            _kept = kept = new Kept(facts, await KeptAsync(context, _kept, cancellationToken));
        return kept.Jars;
    }, cancellationToken);

    /// <summary>The forecasts of every quarter hour learn from these; they are read again only once facts have changed.</summary>
    public async Task<IReadOnlyList<Jar>> EndedLastAsync(int atMost, CancellationToken cancellationToken) => await InOneMomentAsync(async context =>
    {
        long facts = await FactsAsync(context, cancellationToken);
        if (_ended is not { } ended || ended.Facts != facts || ended.AtMost != atMost)
            _ended = ended = new Ended(facts, atMost, await ReadAsync(context, jars => jars.Where(jar => jar.EndedAt != null)
                .OrderByDescending(jar => jar.EndedAt).ThenByDescending(jar => jar.Number).Take(atMost), cancellationToken));
        return ended.Jars;
    }, cancellationToken);

    public Task<IReadOnlyList<Jar>> AllAsync(CancellationToken cancellationToken) =>
        ReadAsync(jars => jars, cancellationToken);

    public async Task<Jar?> FindAsync(int number, CancellationToken cancellationToken) =>
        (await ReadAsync(jars => jars.Where(jar => jar.Number == number), cancellationToken)).SingleOrDefault();

    public Task<IReadOnlyList<Jar>> OfBatchAsync(Guid batch, CancellationToken cancellationToken) =>
        ReadAsync(jars => jars.Where(jar => jar.BatchId == batch), cancellationToken);

    public async Task<IReadOnlyList<Jar>> AddAsync(IReadOnlyList<Jar> jars, CancellationToken cancellationToken)
    {
        Guid[] batches = [.. jars.Select(jar => jar.BatchId).Distinct()];
        await using (var context = await contexts.CreateDbContextAsync(cancellationToken))
        {
            await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
            if (!await context.Jars.AnyAsync(jar => batches.Contains(jar.BatchId), cancellationToken))
            {
                int lastNumber = await context.Jars.MaxAsync(jar => (int?)jar.Number, cancellationToken) ?? 0;
                foreach (var jar in jars)
                    context.Jars.Add(jar).Property(each => each.Number).CurrentValue = ++lastNumber;
                await context.SaveChangesAsync(cancellationToken);
                await transaction.CommitAsync(cancellationToken);
            }
        }

        return await ReadAsync(all => all.Where(jar => batches.Contains(jar.BatchId)), cancellationToken);
    }

    public async Task MoveAsync(JarPlacement placement, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        if (await context.JarPlacements.AnyAsync(each => each.Id == placement.Id, cancellationToken))
            return;
        context.JarPlacements.Add(placement);
        await context.SaveChangesAsync(cancellationToken);
    }

    /// <exception cref="InvalidOperationException">There is no jar of this id.</exception>
    public async Task PutRightAsync(Jar corrected, IReadOnlyList<JarCorrection> corrections, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        var jar = await context.Jars.Include(each => each.Placements).SingleAsync(each => each.Id == corrected.Id, cancellationToken);
        jar.TakeFactsOf(corrected);
        var first = jar.Placements.MinBy(placement => placement.From)!;
        var right = corrected.Placements.Single();
        if (first.PlaceId != right.PlaceId || first.From != right.From)
        {
            context.JarPlacements.Remove(first);
            context.JarPlacements.Add(right);
        }

        context.AddRange(corrections);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    public async Task<bool> TakeBackMoveAsync(Guid placementId, JarCorrection correction, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        if (await context.JarPlacements.SingleOrDefaultAsync(each => each.Id == placementId, cancellationToken) is not { } placement)
            return false;
        context.JarPlacements.Remove(placement);
        context.Add(correction);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return true;
    }

    public async Task ObserveAsync(IReadOnlyList<Observation> observations, CancellationToken cancellationToken)
    {
        Guid[] ids = [.. observations.Select(observation => observation.Id)];
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        var known = await context.Observations
            .Where(observation => ids.Contains(observation.Id)).Select(observation => observation.Id).ToListAsync(cancellationToken);
        var added = observations.ExceptBy(known, observation => observation.Id).ToList();
        context.Observations.AddRange(added);
        await context.SaveChangesAsync(cancellationToken);
        if (added.Exists(observation => observation is StageChange))
            await ConcludeAsync(context, [.. added.Select(observation => observation.JarId)], cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    /// <exception cref="InvalidOperationException">There is no observation of this id.</exception>
    public async Task<bool> CorrectAsync(
        Guid observationId, Instant at, string by, Observation? replacement, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        var observation = await context.Observations.SingleAsync(each => each.Id == observationId, cancellationToken);
        if (observation.VoidedAt is not null)
            return false;
        observation.VoidedAt = at;
        observation.VoidedBy = by;
        Guid[] touched = [observation.JarId];
        if (replacement is not null)
        {
            context.Observations.Add(replacement);
            touched = [observation.JarId, replacement.JarId];
        }

        await context.SaveChangesAsync(cancellationToken);
        await ConcludeAsync(context, touched, cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return true;
    }

    /// <summary>A jar has ended when the stage changes that stand say so; one taken back may bring it to life again.</summary>
    private static async Task ConcludeAsync(RecordsContext context, Guid[] jarIds, CancellationToken cancellationToken)
    {
        var jars = await context.Jars.Include(jar => jar.Observations).Where(jar => jarIds.Contains(jar.Id)).ToListAsync(cancellationToken);
        foreach (var jar in jars)
        {
            var last = jar.Standing.OfType<StageChange>().LastOrDefault();
            jar.EndedAt = last?.Stage is JarStage.Finished or JarStage.ThrownOut ? last.At : null;
        }

        await context.SaveChangesAsync(cancellationToken);
    }

    private static async Task<IReadOnlyList<Jar>> KeptAsync(RecordsContext context, Kept? before, CancellationToken cancellationToken)
    {
        long known = before?.Facts ?? -1;
        var changed = (await ReadAsync(context, jars => jars.Where(jar => jar.EndedAt == null
            && EF.Property<long>(jar, JarTable.ChangedAtRevision) > known), cancellationToken)).ToDictionary(jar => jar.Id);
        var same = (before?.Jars ?? []).ToDictionary(jar => jar.Id);
        Guid[] kept = await context.Jars.Where(jar => jar.EndedAt == null).OrderBy(jar => jar.Number).Select(jar => jar.Id)
            .ToArrayAsync(cancellationToken);
        return [.. kept.Select(jar => changed.GetValueOrDefault(jar) ?? same[jar])];
    }

    private Task<IReadOnlyList<Jar>> ReadAsync(Func<IQueryable<Jar>, IQueryable<Jar>> which, CancellationToken cancellationToken) =>
        InOneMomentAsync(context => ReadAsync(context, which, cancellationToken), cancellationToken);

    /// <summary>
    /// Reads in one transaction, so that the jars, placements and observations of one moment come together; deferred, so that reading
    /// never takes the writer's place.
    /// </summary>
    private async Task<T> InOneMomentAsync<T>(Func<RecordsContext, Task<T>> read, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.Database.OpenConnectionAsync(cancellationToken);
        await using var moment = ((SqliteConnection)context.Database.GetDbConnection()).BeginTransaction(deferred: true);
        await context.Database.UseTransactionAsync(moment, cancellationToken);
        return await read(context);
    }

    private static async Task<IReadOnlyList<Jar>> ReadAsync(
        RecordsContext context, Func<IQueryable<Jar>, IQueryable<Jar>> which, CancellationToken cancellationToken) =>
        await which(context.Jars.AsNoTracking())
            .Include(jar => jar.Placements.OrderBy(placement => placement.From).ThenBy(placement => placement.Id))
            .Include(jar => jar.Corrections.OrderBy(correction => correction.EnteredAt).ThenBy(correction => correction.Id))
            .Include(jar => jar.Observations.OrderBy(observation => observation.At).ThenBy(observation => observation.Id))
            .OrderBy(jar => jar.Number).AsSplitQuery().ToListAsync(cancellationToken);

    private static Task<long> FactsAsync(RecordsContext context, CancellationToken cancellationToken) =>
        context.FactsRevisions.Select(row => row.Facts).SingleAsync(cancellationToken);

    /// <summary>The kept jars as of a revision of the facts; read by many at once, changed by nobody.</summary>
    private sealed record Kept(long Facts, IReadOnlyList<Jar> Jars);

    private sealed record Ended(long Facts, int AtMost, IReadOnlyList<Jar> Jars);
}
