using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Puts the record of a jar right; what stood before is kept.</summary>
[OpenToRecorders]
public sealed class CorrectJar(IJarBook jars, IPlaceBook places, IHouseholdBook households, ReadyStarters starters, IForecastRenewal renewal,
    TimeProvider clock)
{
    /// <summary>What was wrong or odd, or what was corrected.</summary>
    public async Task<CorrectionOrder> DoAsync(Jar jar, CorrectionForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        if (ChildRules.Correcting(mark.Role) is { } refusal)
            return new CorrectionOrder(null, [], [refusal], []);
        Household household = await households.ReadAsync(cancellationToken);
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        CorrectionOrder order = new JarCorrecting(household, known, clock.GetUtcNow().ToInstant(), mark.By,
            await starters.NamedByAsync(form, cancellationToken)).Read(jar, form);
        if (order.Corrected is not { } corrected || order.Corrections.Count == 0)
            return order;
        await jars.PutRightAsync(corrected, order.Corrections, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return order;
    }
}

/// <summary>Files what was entered of one jar and has its forecast renewed.</summary>
public sealed class EntryFiling(IJarBook jars, IForecastRenewal renewal, TimeProvider clock)
{
    /// <summary>Files an observation, in the place of another where it corrects one.</summary>
    public async Task FileAsync(Jar jar, Observation observation, Guid? corrects, EntryMark mark, CancellationToken cancellationToken)
    {
        if (corrects is { } wrong)
            await jars.CorrectAsync(wrong, clock.GetUtcNow().ToInstant(), mark.By, observation, cancellationToken);
        else
            await jars.ObserveAsync([observation], cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
    }
}
