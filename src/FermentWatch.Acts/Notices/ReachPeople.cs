using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Notices;

/// <summary>The ways to reach people: adds, keeps, removes and tries them.</summary>
public sealed class ReachPeople(INoticeBook book, IMemberBook members, IEnumerable<INoticeChannel> channels, TimeProvider clock)
{
    private static readonly Duration TestHolds = Duration.FromMinutes(5);

    /// <summary>Every way there is to reach somebody, each with whether the one who added it has left.</summary>
    public async Task<IReadOnlyList<KnownRoute>> RoutesAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<Member> known = await members.AllAsync(cancellationToken);
        return [.. (await book.RoutesAsync(cancellationToken)).Select(route => new KnownRoute(route,
            route.Channel != Channel.WebPush && Member.IsOrphan(route.MadeBy, route.MadeById, known)))];
    }

    /// <summary>The latest notices, the newest first, with what is stuck and why.</summary>
    public Task<IReadOnlyList<Notice>> LatestAsync(int atMost, CancellationToken cancellationToken) => book.LatestAsync(atMost, cancellationToken);

    /// <summary>Adds a way to reach somebody; the route, or what was wrong.</summary>
    public async Task<(NoticeRoute? Route, IReadOnlyList<Refusal> Refusals)> AddAsync(NoticeRouteInput input, Person by,
        CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        string person = reader.ReadName("person", input.Person);
        Channel channel = reader.ReadChoice("channel", input.Channel, Channel.Webhook);
        INoticeChannel door = channels.First(each => each.Channel == channel);
        if (door.Missing is { } missing)
            reader.Refuse("channel", input.Channel, missing);
        else if (channel == Channel.WebPush)
            reader.Refuse("channel", input.Channel,
                "only the browser that is to be told can add itself: press “Send notices to this phone” on its notices page");
        else if (door.WouldBeRight(input.Address) is { } right)
            reader.Refuse("address", input.Address, right);
        if (reader.Refusals.Count > 0)
            return (null, reader.Refusals);
        var route = new NoticeRoute
        {
            Id = Guid.CreateVersion7(clock.GetUtcNow()), Person = person, Channel = channel, Address = input.Address!.Trim(),
            Secret = string.IsNullOrWhiteSpace(input.Secret) ? null : input.Secret.Trim(), MadeBy = by.Name, MadeById = by.AccountId,
        };
        await book.AddRouteAsync(route, cancellationToken);
        return (route, []);
    }

    /// <summary>Keeps a way that somebody made who has left, as one's own.</summary>
    public Task KeepAsync(Guid routeId, Person by, CancellationToken cancellationToken) => book.KeepRouteAsync(routeId, by, cancellationToken);

    /// <summary>Removes a way; what waits for it is not sent.</summary>
    public Task RemoveAsync(Guid routeId, CancellationToken cancellationToken) => book.RemoveRouteAsync(routeId, cancellationToken);

    /// <summary>Sends a test message at once, past the outbox; how it ended, or null where there is no such route.</summary>
    public async Task<DeliveryOutcome?> TestAsync(Guid routeId, CancellationToken cancellationToken)
    {
        NoticeRoute? route = (await book.RoutesAsync(cancellationToken)).FirstOrDefault(each => each.Id == routeId);
        if (route is null)
            return null;
        Instant now = clock.GetUtcNow().ToInstant();
        var test = new Notice
        {
            Id = Guid.CreateVersion7(now.ToDateTimeOffset()), Key = $"test/{now.ToUnixTimeMilliseconds()}/{route.Id:N}", RouteId = route.Id,
                Person = route.Person,
            Title = "A test", Body = "This is how a morning round will come. Nothing is to be done.",
            DueAt = now, ExpiresAt = now + TestHolds, NextAttemptAt = now,
        };
        return await channels.First(each => each.Channel == route.Channel).SendAsync(test, route, null, cancellationToken);
    }
}

/// <summary>A way to reach somebody.</summary>
/// <param name="Route">The way.</param>
/// <param name="IsOrphan">Whether an adult should keep or remove it: who added it is none of this household any more.</param>
public sealed record KnownRoute(NoticeRoute Route, bool IsOrphan);

/// <summary>How somebody is to be reached, as typed.</summary>
public sealed class NoticeRouteInput
{
    /// <summary>The name the household uses.</summary>
    public string? Person { get; set; }

    /// <summary><c>Email</c>, <c>Webhook</c> or <c>Mqtt</c>.</summary>
    public string? Channel { get; set; }

    /// <summary>Mail address, web address or topic.</summary>
    public string? Address { get; set; }

    /// <summary>Key by which a webhook's body is signed.</summary>
    public string? Secret { get; set; }
}

/// <summary>Has the household told no more of a kind of occasion, or told of it again.</summary>
public sealed class MuteOccasion(IOccasionBook occasions)
{
    /// <summary>Every kind that can be told of, and whether it is muted.</summary>
    public async Task<IReadOnlyList<(OccasionKind Kind, bool IsMuted)>> AllAsync(CancellationToken cancellationToken)
    {
        IReadOnlySet<OccasionKind> muted = await occasions.MutedAsync(cancellationToken);
        return [.. OccasionWords.Told.Select(kind => (kind, muted.Contains(kind)))];
    }

    public Task DoAsync(OccasionKind kind, bool muted, CancellationToken cancellationToken) => occasions.MuteAsync(kind, muted, cancellationToken);
}
