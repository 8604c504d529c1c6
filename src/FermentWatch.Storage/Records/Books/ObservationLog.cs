using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Observations;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <summary>
/// Looks, sightings, tastes, titrations and measured pH that stand (neither moves nor what was done or taken out), in the order of entry.
/// What was taken back before it was passed on stays away; what was taken back later has been passed on.
/// </summary>
internal sealed class ObservationLog(IDbContextFactory<RecordsContext> contexts) : IForwardLog<LoggedObservation>
{
    public async Task<ForwardSlice<LoggedObservation>> AfterAsync(long cursor, int atMost, CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(atMost, 1);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var rows = await Standing(context).Where(row => row.Seq > cursor).OrderBy(row => row.Seq).Take(atMost).ToListAsync(cancellationToken);
        return new ForwardSlice<LoggedObservation>(rows.ConvertAll(row => row.Read()), rows.Count == 0 ? cursor : rows[^1].Seq);
    }

    public async Task<LoggedObservation?> NewestAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return (await Standing(context).OrderByDescending(row => row.Seq).FirstOrDefaultAsync(cancellationToken))?.Read();
    }

    public async Task<long> EndAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.ObservationEntries.MaxAsync(entry => (long?)entry.Seq, cancellationToken) ?? 0;
    }

    public async Task<WaitingEntries> WaitingAsync(long cursor, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var waiting = Standing(context).Where(row => row.Seq > cursor);
        return new WaitingEntries(
            await waiting.LongCountAsync(cancellationToken),
            await waiting.MinAsync(row => (NodaTime.Instant?)row.Observation.EnteredAt, cancellationToken));
    }

    private static IQueryable<Row> Standing(RecordsContext context) =>
        from entry in context.ObservationEntries.AsNoTracking()
        join observation in context.Observations.AsNoTracking() on entry.ObservationId equals observation.Id
        where observation.VoidedAt == null && !(observation is StageChange || observation is Handling
            || observation is PortionTaken || observation is JarOpened)
        select new Row
        {
            Seq = entry.Seq,
            Observation = observation,
            Before = context.ObservationEntries.Count(other =>
                other.Seq < entry.Seq && other.Observation!.JarId == observation.JarId && other.Observation.At == observation.At),
        };

    private sealed class Row
    {
        public required long Seq { get; init; }

        public required Observation Observation { get; init; }

        public required int Before { get; init; }

        public LoggedObservation Read() => new(Observation, Before);
    }
}
