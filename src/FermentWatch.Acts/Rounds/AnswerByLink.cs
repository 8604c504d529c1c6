using System.Globalization;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Rounds;

/// <summary>Where answers by link are handed in. A link opens nothing but its own answer, and each of its jars is answered for once.</summary>
[OpenToRecorders]
public sealed class AnswerByLink(INoticeLinks links, INoticeBook notices, IMemberBook members, IHouseholdBook households, IJarBook jars,
    SayAllWell allWell, TimeProvider clock)
{
    /// <summary>Today's notices of a household are among them.</summary>
    private const int NewestLookedAt = 200;

    /// <summary>What a link is good for. Changes nothing.</summary>
    public async Task<OpenedLink> OpenAsync(string token, CancellationToken cancellationToken)
    {
        if (links.Open(token) is not { } scope
            || await notices.FindAsync(scope.NoticeId, cancellationToken) is not { Question: { } question } notice)
            return new OpenedLink(LinkState.Unknown, null, []);
        if (await IsCutAsync(notice, cancellationToken))
            return new OpenedLink(LinkState.Unknown, null, []);
        Instant now = clock.GetUtcNow().ToInstant();
        if (now >= question.Until)
            return new OpenedLink(LinkState.Expired, notice, []);
        DateTimeZone zone = (await households.ReadAsync(cancellationToken)).Zone;
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken);
        var waiting = question.Waiting(kept.Where(jar => !IsAnsweredBy(notice.Id, jar)), zone);
        var shelves = question.Shelves.Where(shelf => scope.PlaceId is null || shelf.PlaceId == scope.PlaceId)
            .Select(shelf => shelf with { Jars = [.. shelf.Jars.Where(waiting.Contains)], ToOpen = [.. shelf.ToOpen.Where(waiting.Contains)] })
            .Where(shelf => shelf.Jars.Count > 0).ToList();
        return new OpenedLink(shelves.Count > 0 ? LinkState.Open : LinkState.Settled, notice, shelves);
    }

    /// <summary>All well for the jars of a link that still wait.</summary>
    /// <param name="token">The link's token.</param>
    /// <param name="opened">Whether those that were to be opened were opened.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    /// <returns>The link as it was found, and what the answer came to; null where the link was not open.</returns>
    public async Task<(OpenedLink Link, AnswerOutcome? Outcome)> AllWellAsync(string token, bool opened, CancellationToken cancellationToken)
    {
        OpenedLink link = await OpenAsync(token, cancellationToken);
        if (link.State != LinkState.Open)
            return (link, null);
        // Whoever holds the link may look and say so, and no more.
        string person = link.Notice!.Person;
        Guid? account = (await members.AllAsync(cancellationToken)).FirstOrDefault(member => member.Name == person)?.AccountId;
        var mark = new EntryMark(link.Notice.Id, new Person(person, account), MemberRole.Child);
        return (link, await allWell.DoAsync(link.Jars.ToHashSet(), opened ? link.ToOpen.ToHashSet() : [], mark, cancellationToken));
    }

    /// <summary>Later, by a link.</summary>
    /// <returns>The link as it was found, and when it is asked again; null where the link was not open or the day would be over.</returns>
    public async Task<(OpenedLink Link, Instant? AskedAgainAt)> LaterAsync(string token, CancellationToken cancellationToken)
    {
        OpenedLink link = await OpenAsync(token, cancellationToken);
        return (link, link.State == LinkState.Open ? await PutOffAsync([link.Notice!], cancellationToken) : null);
    }

    /// <summary>Whether a person was asked today and can still put it off.</summary>
    public async Task<bool> CanPutOffAsync(string person, CancellationToken cancellationToken) =>
        (await AskedAsync(person, cancellationToken)).Any(notice => Postponing.AskAgain(notice, Now) is not null);

    /// <summary>Later, by a person who signed in: by every way this person was asked. The time of day, or null where nothing is asked
    /// again.</summary>
    public async Task<string?> PutOffAsync(string person, CancellationToken cancellationToken)
    {
        if (await PutOffAsync(await AskedAsync(person, cancellationToken), cancellationToken) is not { } at)
            return null;
        return at.InZone((await households.ReadAsync(cancellationToken)).Zone).ToString("HH:mm", CultureInfo.InvariantCulture);
    }

    private Instant Now => clock.GetUtcNow().ToInstant();

    private async Task<Instant?> PutOffAsync(IEnumerable<Notice> asked, CancellationToken cancellationToken)
    {
        Notice[] again = [.. asked.Select(notice => Postponing.AskAgain(notice, Now)).OfType<Notice>()];
        await notices.QueueAsync(again, cancellationToken);
        return again.Length > 0 ? again[0].DueAt : null;
    }

    /// <summary>What asks a person at present, by each way the newest; nothing where every jar is answered for or one waits to be sent.</summary>
    private async Task<IReadOnlyList<Notice>> AskedAsync(string person, CancellationToken cancellationToken)
    {
        DateTimeZone zone = (await households.ReadAsync(cancellationToken)).Zone;
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken);
        var newest = (await notices.LatestAsync(NewestLookedAt, cancellationToken))
            .Where(notice => notice.Person == person && notice.Question is { } question && Now < question.Until
                && question.Waiting(kept, zone).Count > 0)
            .GroupBy(notice => notice.RouteId).Select(same => same.MaxBy(notice => notice.DueAt)!).ToList();
        return newest.Exists(notice => notice.DueAt > Now) ? [] : newest;
    }

    /// <summary>Whether the way it was sent by is gone, or the person's doors were closed since.</summary>
    private async Task<bool> IsCutAsync(Notice notice, CancellationToken cancellationToken) =>
        (await notices.RoutesAsync(cancellationToken)).All(route => route.Id != notice.RouteId)
        || (await members.AllAsync(cancellationToken)).FirstOrDefault(member => member.Name == notice.Person)?.DoorsClosedAt >= notice.DueAt;

    /// <summary>An answer of this notice that was taken back is not given again by its links.</summary>
    private static bool IsAnsweredBy(Guid noticeId, Jar jar)
    {
        Guid answer = AnswerId.Of(noticeId, jar.Id);
        return jar.Observations.Exists(each => each.Id == answer);
    }
}

/// <summary>A link that somebody followed.</summary>
/// <param name="State">What it is still good for.</param>
/// <param name="Notice">The notice it came with; null where <see cref="LinkState.Unknown"/>.</param>
/// <param name="Waiting">Its jars that nobody has answered for, by shelf.</param>
public sealed record OpenedLink(LinkState State, Notice? Notice, IReadOnlyList<AskedShelf> Waiting)
{
    /// <summary>Numbers of the jars that wait.</summary>
    public IEnumerable<int> Jars => Waiting.SelectMany(shelf => shelf.Jars);

    /// <summary>Numbers of those that were to be opened.</summary>
    public IEnumerable<int> ToOpen => Waiting.SelectMany(shelf => shelf.ToOpen);
}

/// <summary>What a link is still good for.</summary>
public enum LinkState
{
    /// <summary>We did not make it, or its notice is gone.</summary>
    Unknown = 1,

    /// <summary>Its day is over.</summary>
    Expired = 2,

    /// <summary>Every one of its jars is answered for.</summary>
    Settled = 3,

    /// <summary>It waits for an answer.</summary>
    Open = 4,
}
