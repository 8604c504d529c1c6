using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Tells people of what has come up, each cause once; what is muted is passed over for good.</summary>
public sealed class OccasionPass(OccasionFactsReader reading, IHouseholdBook households, IMemberBook members, IOccasionBook occasions,
    INoticeBook notices,
    SetAside setAside)
{
    /// <summary>A lasting state that was away for longer than this has ended; what comes then is another cause.</summary>
    private static readonly Duration EndsAfter = Duration.FromDays(1);

    private (Instant Quarter, long Facts, bool Morning, bool Evening)? _seen;

    /// <summary>Queues what is to be told. Returns how many occasions were new.</summary>
    public async Task<int> RunAsync(Instant now, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        if (!OccasionHours.Hold(household, now))
            return 0;
        LocalTime clock = now.InZone(household.Zone).TimeOfDay;
        var seen = (QuarterHour.Floor(now), await households.RevisionAsync(cancellationToken), clock >= household.RoundAt,
            clock >= household.EveningAt);
        IReadOnlyList<NoticeRoute> routes = await notices.RoutesAsync(cancellationToken);
        // With nobody to tell nothing counts as told: who joins hears what is so then.
        if (seen == _seen || routes.Count == 0)
            return 0;
        Roster roster = await members.RosterAsync(now.InZone(household.Zone).Date, cancellationToken);
        int told = await TellAsync(await reading.ReadAsync(household, roster, now, cancellationToken), new Audience(routes, roster, household.Zone),
            cancellationToken);
        _seen = seen;
        return told;
    }

    private async Task<int> TellAsync(OccasionFacts facts, Audience audience, CancellationToken cancellationToken)
    {
        var known = (await occasions.ToldAsync(cancellationToken)).ToLookup(told => (told.Kind, told.Subject, told.Cause));
        IReadOnlySet<OccasionKind> muted = await occasions.MutedAsync(cancellationToken);
        var stillSo = new List<Guid>();
        var fresh = new List<Occasion>();
        using SetAside.SetAsideRun run = setAside.Begin("occasion");
        foreach (Occasion occasion in OccasionRules.Of(facts, run))
        {
            if (known[(occasion.Kind, occasion.Subject, occasion.Cause)].FirstOrDefault(told => IsSame(occasion, told, facts.Now)) is not { } told)
                fresh.Add(occasion);
            else if (occasion.Lasting)
                stillSo.Add(told.Id);
        }
        if (stillSo.Count > 0)
            await occasions.StillSoAsync(stillSo, facts.Now, cancellationToken);
        foreach (var alike in fresh.GroupBy(each => (each.Kind, each.Headline, each.Body, each.KnownTo)))
        {
            var group = alike.ToList();
            IReadOnlyList<Notice> told = muted.Contains(alike.Key.Kind) ? []
                : Draft(group, facts).For(audience.OfAdults(alike.Key.KnownTo), audience);
            await occasions.TellAsync([.. group.Select(each => Told(each, facts))], told, cancellationToken);
        }
        return fresh.Count;
    }

    private static bool IsSame(Occasion occasion, ToldOccasion told, Instant now) =>
        !occasion.Lasting || (now - told.LastSeenAt < EndsAfter && told.LastSeenAt - now < EndsAfter);

    private static ToldOccasion Told(Occasion occasion, OccasionFacts facts) => new()
    {
        Id = Guid.CreateVersion7(facts.Now.ToDateTimeOffset()), Key = Key(occasion, facts), Kind = occasion.Kind, Subject = occasion.Subject,
        Cause = occasion.Cause, ToldAt = facts.Now, LastSeenAt = facts.Now,
    };

    private static string Key(Occasion occasion, OccasionFacts facts) => string.Create(CultureInfo.InvariantCulture,
        $"{occasion.Kind}/{occasion.Subject:N}/{occasion.Cause}{(occasion.Lasting ? $"/{facts.Now.ToUnixTimeSeconds()}" : "")}");

    private static NoticeDraft Draft(List<Occasion> alike, OccasionFacts facts)
    {
        string keys = string.Join('|', alike.Select(each => Key(each, facts)).Order(StringComparer.Ordinal));
        string name = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(keys)))[..16];
        return new NoticeDraft($"occasion/{alike[0].Kind}/{name}", OccasionWords.Title(alike), alike[0].Body,
            facts.Now, OccasionHours.Expiry(alike[0].Kind, facts.Now));
    }
}
