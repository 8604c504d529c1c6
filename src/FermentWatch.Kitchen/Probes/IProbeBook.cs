namespace FermentWatch.Kitchen.Probes;

/// <summary>The record of what probes showed in buffers.</summary>
public interface IProbeBook
{
    /// <summary>Every check, by <see cref="ProbeCheck.At"/>.</summary>
    Task<IReadOnlyList<ProbeCheck>> AllAsync(CancellationToken cancellationToken);

    /// <summary>
    /// Files a check, once however often it is sent under its id; what its sensor has in the log is to be judged again.
    /// </summary>
    Task AddAsync(ProbeCheck check, CancellationToken cancellationToken);
}
