using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>Delivers what is due in the outbox.</summary>
public sealed class DeliveryPass(
    INoticeBook notices, IEnumerable<INoticeChannel> channels, IHouseholdBook households, IMemberBook members, IJarBook jars, IClock clock,
    SetAside setAside)
{
    /// <summary>Longer than any attempt may take; after it a notice of a process that died is tried again.</summary>
    private static readonly Duration Claim = Duration.FromMinutes(2);

    private static readonly Duration LateAfter = Duration.FromMinutes(10);

    private const int AtOnce = 20;

    private readonly Dictionary<Channel, INoticeChannel> _channels = channels.ToDictionary(channel => channel.Channel);

    /// <summary>How attempts ended. Without a route, or a channel for it, there was none.</summary>
    public DeliveryCounts Counts { get; } = new();

    /// <summary>Tries every notice that is due once. Returns how many were delivered.</summary>
    public async Task<int> RunAsync(CancellationToken cancellationToken)
    {
        int delivered = 0;
        using SetAside.SetAsideRun run = setAside.Begin("delivery");
        while (true)
        {
            Instant now = clock.GetCurrentInstant();
            IReadOnlyList<Notice> due = await notices.ClaimAsync(now, now + Claim, AtOnce, cancellationToken);
            if (due.Count == 0)
                return delivered;
            var routes = (await notices.RoutesAsync(cancellationToken)).ToDictionary(route => route.Id);
            DateTimeZone zone = (await households.ReadAsync(cancellationToken)).Zone;
            due = await PutOffQuietAsync(due, routes.Values, zone, now, run, cancellationToken);
            due = await LeaveAnsweredAsync(due, zone, now, run, cancellationToken);
            DeliveryResult[] results = await Task.WhenAll(due.Select(notice => TryAndSettleAsync(notice, routes, now, cancellationToken)));
            delivered += results.Count(result => result == DeliveryResult.Delivered);
        }
    }

    /// <summary>
    /// Written down as each attempt ends, also while the service stops: a receiver that hangs must not have the others told twice.
    /// </summary>
    private async Task<DeliveryResult> TryAndSettleAsync(
        Notice notice, Dictionary<Guid, NoticeRoute> routes, Instant now, CancellationToken cancellationToken)
    {
        DeliveryOutcome outcome;
        try
        {
            outcome = await TryAsync(notice, routes, now, cancellationToken);
        }
        catch (Exception bug) when (bug is not OperationCanceledException || !cancellationToken.IsCancellationRequested)
        {
            // Whatever it was, it must not hold up what others are to be told; the reason is kept with the notice.
            outcome = DeliveryOutcome.TryAgain($"It could not be sent: {bug.Message}");
        }
        Apply(notice, outcome, clock.GetCurrentInstant());
        if (routes.TryGetValue(notice.RouteId, out NoticeRoute? route) && _channels.ContainsKey(route.Channel))
            Counts.Count(route.Channel, notice.State);
        await notices.SettleAsync(notice, CancellationToken.None);
        return outcome.Result;
    }

    /// <summary>Puts off those whose person is left in peace now: one tried again after trouble must not wake anybody. Gives the rest.</summary>
    private async Task<IReadOnlyList<Notice>> PutOffQuietAsync(
        IReadOnlyList<Notice> due, IEnumerable<NoticeRoute> routes, DateTimeZone zone, Instant now,
        SetAside.SetAsideRun run, CancellationToken cancellationToken)
    {
        var audience = new Audience([.. routes], await members.RosterAsync(now.InZone(zone).Date, cancellationToken), zone);
        var rest = new List<Notice>();
        foreach (Notice notice in due)
        {
            // Of whom it cannot be told when they are left in peace, they are told at once.
            Instant when = now;
            run.Try(Named(notice), () => when = audience.WhenFor(notice.Person, now));
            if (when <= now || now >= notice.ExpiresAt)
            {
                rest.Add(notice);
                continue;
            }
            notice.Attempts = Math.Max(0, notice.Attempts - 1);
            notice.NextAttemptAt = when;
            await notices.SettleAsync(notice, cancellationToken);
        }
        return rest;
    }

    /// <summary>Settles those whose question was answered meanwhile: one that was put off, or comes late. Gives the rest.</summary>
    private async Task<IReadOnlyList<Notice>> LeaveAnsweredAsync(
        IReadOnlyList<Notice> due, DateTimeZone zone, Instant now, SetAside.SetAsideRun run, CancellationToken cancellationToken)
    {
        if (!due.Any(notice => notice.Question is not null))
            return due;
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken);
        var rest = new List<Notice>();
        foreach (Notice notice in due)
        {
            bool waiting = true;
            if (notice.Question is not null)
                run.Try(Named(notice), () => waiting = notice.Question.Waiting(kept, zone).Count > 0);
            if (waiting)
            {
                rest.Add(notice);
                continue;
            }
            (notice.State, notice.SettledAt) = (NoticeState.Answered, now);
            await notices.SettleAsync(notice, cancellationToken);
        }
        return rest;
    }

    private static string Named(Notice notice) => $"notice '{notice.Key}'";

    private async Task<DeliveryOutcome> TryAsync(
        Notice notice, Dictionary<Guid, NoticeRoute> routes, Instant now, CancellationToken cancellationToken)
    {
        if (now >= notice.ExpiresAt)
            return DeliveryOutcome.TryAgain(notice.LastTrouble ?? "It could not be sent before it became pointless.");
        if (!routes.TryGetValue(notice.RouteId, out NoticeRoute? route))
            return DeliveryOutcome.Refused("The route was removed.");
        if (!_channels.TryGetValue(route.Channel, out INoticeChannel? channel))
            return DeliveryOutcome.TryAgain($"The channel {route.Channel} is switched off.");
        return await channel.SendAsync(notice, route, Lateness(notice, now), cancellationToken);
    }

    /// <summary>What an outcome makes of a notice.</summary>
    public static void Apply(Notice notice, DeliveryOutcome outcome, Instant now)
    {
        notice.LastTrouble = outcome.Trouble;
        notice.State = outcome.Result switch
        {
            DeliveryResult.Delivered => NoticeState.Delivered,
            DeliveryResult.Refused => NoticeState.Refused,
            _ when now >= notice.ExpiresAt => NoticeState.Expired,
            _ => NoticeState.Queued,
        };
        if (notice.State == NoticeState.Queued)
            notice.NextAttemptAt = now + Duration.Max(Backoff.Outside.After(notice.Attempts), outcome.Wait ?? Duration.Zero);
        else
            notice.SettledAt = now;
    }

    private static string? Lateness(Notice notice, Instant now)
    {
        Duration late = now - notice.DueAt;
        if (late < LateAfter)
            return null;
        return late < Duration.FromMinutes(90)
            ? $"{(int)late.TotalMinutes} minutes late"
            : $"{(int)Math.Round(late.TotalHours)} hours late";
    }
}
