using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Sensors;

/// <summary>
/// Takes readings of earlier years into the log of a sensor. They wait there for their verdicts as any others do. Each counts as having come in
/// when it was measured: whoever kept it believed its clock, and a reading of long ago is no late one.
/// </summary>
public sealed class TakeOldReadings(ISensorBook sensors, IReadingIntake intake, TimeProvider clock)
{
    /// <summary>Readings in one commit: a service beside it waits for no more than these.</summary>
    private const int AtOnce = 20_000;

    /// <summary>Before it no home had such sensors: a clock that was never set.</summary>
    public static readonly Instant Earliest = Instant.FromUtc(2000, 1, 1, 12, 0);

    /// <summary>The latest time that is believed now.</summary>
    public Instant Latest => clock.GetUtcNow().ToInstant() + ReadingJudge.ClockMayLead;

    /// <summary>The sensor of a name, or what would be right.</summary>
    public async Task<(Sensor? Sensor, Refusal? Refusal)> FindAsync(string? name, CancellationToken cancellationToken) =>
        await sensors.FindAsync((name ?? "").Trim(), cancellationToken) is { } sensor ? (sensor, null)
            : (null, new Refusal("sensor", string.IsNullOrWhiteSpace(name) ? "nothing" : name.Trim(),
                "the name of a sensor in service would be right; 'fermentwatch sensor list' shows them, 'fermentwatch sensor add' makes one"));

    /// <summary>Takes values in the unit in which the quantity is stored. The same time and value again is the same reading.</summary>
    /// <exception cref="IOException">The log could not be written; what was taken before stands, and may be taken again.</exception>
    public async Task<TakenReadings> DoAsync(
        Sensor sensor, Quantity quantity, IEnumerable<(Instant At, double Value)> values, CancellationToken cancellationToken)
    {
        var taken = new TakenReadings(0, 0, 0);
        var group = new List<Reading>(AtOnce);
        foreach ((Instant at, double value) in values)
        {
            group.Add(new Reading(sensor.Key, quantity, value, at, at, TimeSource.Payload));
            if (group.Count < AtOnce)
                continue;
            taken = taken.With(await intake.AppendAsync(group, cancellationToken));
            group.Clear();
        }
        return taken.With(await intake.AppendAsync(group, cancellationToken));
    }
}

/// <summary>What became of readings.</summary>
/// <param name="Stored">New in the log.</param>
/// <param name="Duplicates">There already with the same value.</param>
/// <param name="Conflicts">There already at that time with another value, which stays.</param>
public sealed record TakenReadings(long Stored, long Duplicates, long Conflicts)
{
    internal TakenReadings With(AppendResult more) => new(Stored + more.Stored, Duplicates + more.Duplicates, Conflicts + more.Conflicts);
}
