using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Export.Points;

/// <summary>Reads from the records what tags need.</summary>
public sealed class OwnerReader(ISensorBook sensors, IJarBook jars, IPlaceBook places)
{
    /// <summary>Reads the names. Jars of former years are read only when asked for: they are many and seldom needed.</summary>
    public async Task<OwnerNames> ReadAsync(bool everyJar, CancellationToken cancellationToken) => new(
        await sensors.AllAsync(cancellationToken),
        everyJar ? await jars.AllAsync(cancellationToken) : await jars.KeptAsync(cancellationToken),
        await places.AllAsync(cancellationToken));
}
