using FermentWatch.Kitchen.Archives;

namespace FermentWatch.Acts.Households;

/// <summary>Hands the whole household out as one file. It holds what everybody wrote: an adult's to take, as no role of it is a child's.</summary>
public sealed class ExportHousehold(IHouseholdArchive archive, TimeProvider clock)
{
    /// <summary>What the file is called, by the day in UTC.</summary>
    public string FileName => $"household-{clock.GetUtcNow():yyyy-MM-dd}.zip";

    /// <summary>Writes it, as it is made; years of readings take minutes.</summary>
    /// <exception cref="IOException">The databases could not be read, or it could not be written; what was written is then no whole file.</exception>
    public Task DoAsync(Stream to, bool withReadings, CancellationToken cancellationToken) =>
        archive.WriteAsync(to, withReadings, progress: null, cancellationToken);
}
