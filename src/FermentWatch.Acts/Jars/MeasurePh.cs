using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Enters a pH of a jar.</summary>
public sealed class MeasurePh(IHouseholdBook households, EntryFiling filing, TimeProvider clock)
{
    /// <summary>What was written down, what was wrong, or what is asked.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="form">What was typed.</param>
    /// <param name="mark">Who enters it and under which id.</param>
    /// <param name="corrects">The observation whose place it takes, which is taken back; null where it takes none.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<PhEntry> DoAsync(Jar jar, PhForm form, EntryMark mark, Guid? corrects, CancellationToken cancellationToken)
    {
        if (ChildRules.Measuring(mark.Role) is { } refusal)
            return new PhEntry(null, [refusal]);
        Household household = await households.ReadAsync(cancellationToken);
        PhEntry entry = PhEntry.Read(form, jar, household, clock.GetUtcNow().ToInstant(), mark);
        if (entry.Measurement is not { } read)
            return entry;
        var sent = SentBefore<PhMeasurement>.Of(read, jar, mark, each => each.Content, read.Under);
        if (sent.Asked is null && !sent.IsFiled)
        {
            await NoteToolAsync(household, read.Method, cancellationToken);
            await filing.FileAsync(jar, sent.Observation, sent.Corrects ?? corrects, mark, cancellationToken);
        }
        return entry with { Measurement = sent.Observation, Asked = sent.Asked };
    }

    /// <summary>Whoever enters a pH has something to measure with; the household page says otherwise any day.</summary>
    private async Task NoteToolAsync(Household household, PhMethod method, CancellationToken cancellationToken)
    {
        if (household.Measures)
            return;
        household.PhTool = method switch { PhMethod.Meter => PhTool.Meter, PhMethod.Probe => PhTool.Probe, _ => PhTool.Strips };
        await households.WriteAsync(household, cancellationToken);
    }
}
