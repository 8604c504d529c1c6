using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

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
