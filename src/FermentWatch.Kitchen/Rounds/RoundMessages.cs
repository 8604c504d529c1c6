using System.Globalization;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>The messages of one morning: the round to those whose day it is, and to the adults what a child does not do.</summary>
public static class RoundMessages
{
    /// <summary>The notices of a round, each person's own text.</summary>
    /// <param name="sheet">The round.</param>
    /// <param name="audience">How people are reached.</param>
    /// <param name="roster">Who does the round when.</param>
    /// <param name="dueAt">When it was promised.</param>
    /// <param name="expiresAt">When it has become pointless.</param>
    /// <param name="endOfDay">Until when an answer says something of this day.</param>
    public static IReadOnlyList<Notice> Of(RoundSheet sheet, Audience audience, Roster roster, Instant dueAt, Instant expiresAt, Instant endOfDay)
    {
        string date = sheet.Date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
        IReadOnlyList<NoticeRoute> looking = audience.OfRound(sheet.Date);
        ILookup<bool, NoticeRoute> byChild = looking.ToLookup(route => roster.Of(route.Person).IsChild);
        var messages = new List<Notice>();
        var adults = new NoticeDraft($"round/{date}", RoundWords.Title(sheet), RoundWords.Body(sheet), dueAt, expiresAt);
        messages.AddRange(RoundQuestion.Ask(adults.For(byChild[false], audience), sheet, endOfDay));
        NoticeDraft children = adults with { Body = RoundWords.ChildBody(sheet) };
        messages.AddRange(RoundQuestion.Ask(children.For(byChild[true], audience), sheet, endOfDay, opening: false));
        if (LookingChildren(sheet.Date, roster, byChild) is { } who && RoundWords.BesideAChild(sheet, who) is { } beside)
            messages.AddRange(new NoticeDraft($"beside/{date}", beside.Title, beside.Body, dueAt, expiresAt).For(audience.AdultsBeside(sheet.Date),
                audience));
        return messages;
    }

    /// <summary>The children who look by themselves; null where an adult looks too.</summary>
    private static string? LookingChildren(LocalDate date, Roster roster, ILookup<bool, NoticeRoute> reached)
    {
        IReadOnlyList<Member> onDuty = roster.OnDuty(date);
        bool alone = onDuty.Count > 0 && onDuty.All(member => member.IsChild) && !reached[false].Any();
        return alone ? string.Join(" and ", onDuty.Select(member => member.Name)) : null;
    }
}
