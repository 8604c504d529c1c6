using System.Globalization;
using System.Text.Json.Serialization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Typed;
using NodaTime;

namespace FermentWatch.Acts.Households;

/// <summary>Where it is written down who does the round on which days, and when people are left in peace.</summary>
public sealed class ShareDuties(IMemberBook members, INoticeBook notices)
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
        if ((await members.AllAsync(cancellationToken)).FirstOrDefault(each => each.Name == person) is { } known
            && Shown.Check("person", input.Shown, FactsOf(known.Duty)) is { } older)
            return [older];
        Weekdays days = (input.Days ?? []).Aggregate(Weekdays.None, (sum, day) => sum | reader.ReadChoice("days", day, Weekdays.None));
        LocalTime? from = reader.ReadTimeOfDay("quiet from", input.QuietFrom, "22:00"),
            until = reader.ReadTimeOfDay("quiet until", input.QuietUntil, "22:00");
        if (reader.Refusals.Count == 0 && (from is null != until is null || (from is not null && from == until)))
            reader.Refuse("quiet until", input.QuietUntil, "both times of the quiet hours would be right, one unlike the other, or neither");
        if (reader.Refusals.Count == 0)
            await members.WriteAsync(new Duty { Person = person, Days = days & Weekdays.All, QuietFrom = from, QuietUntil = until },
                cancellationToken);
        return reader.Refusals;
    }

    /// <summary>What a form about it shows.</summary>
    public static IEnumerable<(string Field, string Value)> FactsOf(Duty duty) =>
        [("days", duty.Days.ToString()), ("quiet from", Clock(duty.QuietFrom)), ("quiet until", Clock(duty.QuietUntil))];

    private static string Clock(LocalTime? time) => time?.ToString("HH:mm", CultureInfo.InvariantCulture) ?? "never";
}

/// <summary>A person's days and quiet hours, as typed.</summary>
public sealed class DutyInput
{
    public string? Person { get; set; }

    /// <summary>Names of days.</summary>
    public List<string>? Days { get; set; }

    /// <summary>Begin of the quiet hours, <c>22:00</c>; empty for none.</summary>
    public string? QuietFrom { get; set; }

    /// <summary>End of the quiet hours; empty for none.</summary>
    public string? QuietUntil { get; set; }

    /// <summary>What the form showed when it was opened, by <see cref="Kitchen.Typed.Shown"/>; left out by scripts.</summary>
    [JsonIgnore]
    public string? Shown { get; set; }
}
