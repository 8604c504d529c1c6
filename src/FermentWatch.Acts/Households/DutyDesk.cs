using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Acts.Households;

/// <summary>Where it is written down who does the round on which days, and when people are left in peace.</summary>
public sealed class DutyDesk(IMemberBook members, INoticeBook notices)
{
    /// <summary>Everybody the round may fall to, each with the number of ways there are to reach this person.</summary>
    public async Task<IReadOnlyList<(Member Member, int Routes)>> AllAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<Member> known = await members.AllAsync(cancellationToken);
        var reached = (await notices.RoutesAsync(cancellationToken)).ToLookup(route => route.Person);
        return [.. known.Concat(reached.Select(person => person.Key).Except(known.Select(member => member.Name)).Select(Member.Unknown))
            .Select(member => (member, reached[member.Name].Count()))];
    }

    /// <summary>Writes a person's days and quiet hours; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> WriteAsync(DutyInput input, CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        string person = (input.Person ?? "").Trim();
        if ((await AllAsync(cancellationToken)).All(each => each.Member.Name != person))
            reader.Refuse("person", person, "somebody of the household would be right");
        Weekdays days = (input.Days ?? []).Aggregate(Weekdays.None, (sum, day) => sum | reader.ReadChoice("days", day, Weekdays.None));
        LocalTime? from = ReadTime("quiet from", input.QuietFrom, reader), until = ReadTime("quiet until", input.QuietUntil, reader);
        if (reader.Refusals.Count == 0 && (from is null != until is null || (from is not null && from == until)))
            reader.Refuse("quiet until", input.QuietUntil, "both times of the quiet hours would be right, one unlike the other, or neither");
        if (reader.Refusals.Count == 0)
            await members.WriteAsync(new Duty { Person = person, Days = days & Weekdays.All, QuietFrom = from, QuietUntil = until }, cancellationToken);
        return reader.Refusals;
    }

    private static LocalTime? ReadTime(string field, string? typed, FieldReader reader)
    {
        string time = (typed ?? "").Trim();
        if (time.Length == 0)
            return null;
        if (LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(time.Length > 5 ? time[..5] : time) is { Success: true, Value: var read })
            return read;
        reader.Refuse(field, typed, "a time of day would be right, such as 22:00");
        return null;
    }
}
