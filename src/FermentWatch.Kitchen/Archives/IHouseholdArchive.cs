namespace FermentWatch.Kitchen.Archives;

/// <summary>The whole household as one file to keep, to read elsewhere, and to begin anew from.</summary>
public interface IHouseholdArchive
{
    /// <summary>Writes a zip of the records as they stand at one moment: JSON, CSV and photos, no secrets.</summary>
    /// <param name="to">Where it goes; written from front to end, never read.</param>
    /// <param name="withReadings">Whether all readings of all sensors come along.</param>
    /// <param name="progress">Told the share of the readings that is written, 0 to 1; null where nobody asks.</param>
    /// <param name="cancellationToken">Gives up; what was written is then no whole zip.</param>
    /// <exception cref="IOException">The databases could not be read, or <paramref name="to"/> not written.</exception>
    Task WriteAsync(Stream to, bool withReadings, Action<double>? progress, CancellationToken cancellationToken);
}
