using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Sensors;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Sensors;

/// <summary>Where checks of probes in buffers are handed in, by the pages and the API.</summary>
public sealed class CalibrationDesk(IProbeBook probes, IHouseholdBook households, WrittenDown written, TimeProvider clock)
{
    /// <summary>Files a check, or tells everything that is wrong with it; what was read since is judged again.</summary>
    public async Task<CalibrationEntry> EnterAsync(Sensor sensor, CalibrationForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        CalibrationEntry entry = CalibrationEntry.Read(form, sensor, household, clock.GetUtcNow().ToInstant(), mark);
        if (entry.Check is { } check)
        {
            await probes.AddAsync(check, cancellationToken);
            written.SayChecks();
        }
        return entry;
    }

    /// <summary>Takes a check back, and what was read since is judged again. False if there is none of this id of this sensor.</summary>
    public async Task<bool> TakeBackAsync(Sensor sensor, Guid check, string by, CancellationToken cancellationToken)
    {
        if (!(await probes.FiledAsync(sensor.Id, cancellationToken)).Any(each => each.Id == check))
            return false;
        await probes.TakeBackAsync(check, clock.GetUtcNow().ToInstant(), by, cancellationToken);
        written.SayChecks();
        return true;
    }

    /// <summary>The checks of a sensor's probe, the last first, those taken back among them.</summary>
    public async Task<IReadOnlyList<ProbeCheck>> OfAsync(Sensor sensor, CancellationToken cancellationToken) =>
        [.. (await probes.FiledAsync(sensor.Id, cancellationToken)).Reverse()];
}
