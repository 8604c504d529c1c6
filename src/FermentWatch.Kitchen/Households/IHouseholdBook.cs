namespace FermentWatch.Kitchen.Households;

/// <summary>The record of the household itself.</summary>
public interface IHouseholdBook
{
    /// <summary>The household; a new database has one with the defaults, in UTC.</summary>
    Task<Household> ReadAsync(CancellationToken cancellationToken);

    Task WriteAsync(Household household, CancellationToken cancellationToken);

    /// <summary>Grows with every recorded fact (places, sensors, jars, observations, the household), not with derived rows.</summary>
    Task<long> RevisionAsync(CancellationToken cancellationToken);
}
