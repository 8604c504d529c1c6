using NodaTime;

namespace FermentWatch.Kitchen.Probes;

/// <summary>The record of what probes showed in buffers.</summary>
public interface IProbeBook
{
    /// <summary>Every check that was not taken back, by <see cref="ProbeCheck.At"/>.</summary>
    Task<IReadOnlyList<ProbeCheck>> StandingAsync(CancellationToken cancellationToken);

    /// <summary>Every check of a sensor's probe, those taken back among them, by <see cref="ProbeCheck.At"/>.</summary>
    Task<IReadOnlyList<ProbeCheck>> FiledAsync(Guid sensorId, CancellationToken cancellationToken);

    /// <summary>
    /// Files a check, once however often it is sent under its id; what its sensor has in the log is to be judged again.
    /// </summary>
    Task AddAsync(ProbeCheck check, CancellationToken cancellationToken);

    /// <summary>Takes a check back; what its sensor has in the log is to be judged again. False if it was taken back before.</summary>
    /// <exception cref="InvalidOperationException">There is no check of this id.</exception>
    Task<bool> TakeBackAsync(Guid checkId, Instant at, string by, CancellationToken cancellationToken);
}
