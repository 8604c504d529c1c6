using FermentWatch.Kitchen.Answers;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Service.Pages.Entering;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Pages.Answers;

/// <summary>Where answers by link are handed in. A link opens nothing but its own answer, and each of its jars is answered for once.</summary>
public sealed class AnswerDesk(AnswerLinks links, INoticeBook notices, IHouseholdBook households, IJarBook jars, RoundDesk rounds, TimeProvider clock)
{
    /// <summary>What a link is good for. Changes nothing.</summary>
    public async Task<OpenedLink> OpenAsync(string token, CancellationToken cancellationToken)
    {
        if (links.Open(token) is not { } scope || await notices.FindAsync(scope.NoticeId, cancellationToken) is not { Question: { } question } notice)
            return new OpenedLink(LinkState.Unknown, null, []);
        Instant now = clock.GetUtcNow().ToInstant();
        if (now >= question.Until)
            return new OpenedLink(LinkState.Expired, notice, []);
        DateTimeZone zone = (await households.ReadAsync(cancellationToken)).Zone;
        LocalDate today = now.InZone(zone).Date;
        var waiting = (await jars.KeptAsync(cancellationToken)).Where(jar => Waits(jar, notice.Id, today, zone)).Select(jar => jar.Number).ToHashSet();
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
        var mark = new EntryMark(link.Notice!.Id, link.Notice.Person, MemberRole.Child);
        return (link, await rounds.AllWellAsync(link.Jars.ToHashSet(), opened ? link.ToOpen.ToHashSet() : [], mark, cancellationToken));
    }

    /// <summary>Whether nobody has answered for a jar; an answer of this notice that was taken back is not given again by its links.</summary>
    private static bool Waits(Jar jar, Guid noticeId, LocalDate today, DateTimeZone zone)
    {
        Guid answer = AnswerId.Of(noticeId, jar.Id);
        return jar.Stage == JarStage.Fermenting
            && !jar.Observations.Exists(each => each.Id == answer)
            && !jar.Standing.Any(each => each is Look or Sighting && each.At.InZone(zone).Date == today);
    }
}
