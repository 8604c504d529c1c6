using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Enters a titration of a jar's brine.</summary>
public sealed class TitrateBrine(IHouseholdBook households, EntryFiling filing, TimeProvider clock)
{
    /// <summary>What was written down, what was wrong, or what is asked.</summary>
    public async Task<TitrationEntry> DoAsync(Jar jar, TitrationForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        if (ChildRules.Measuring(mark.Role) is { } refusal)
            return new TitrationEntry(null, [refusal]);
        Household household = await households.ReadAsync(cancellationToken);
        TitrationEntry entry = TitrationEntry.Read(form, jar, household.Zone, clock.GetUtcNow().ToInstant(), mark);
        if (entry.Titration is not { } read)
            return entry;
        var sent = SentBefore<Titration>.Of(read, jar, mark, each => each.Content, read.Under);
        if (sent.Asked is null && !sent.IsFiled)
            await filing.FileAsync(jar, sent.Observation, sent.Corrects, mark, cancellationToken);
        return entry with { Titration = sent.Observation, Asked = sent.Asked };
    }
}
