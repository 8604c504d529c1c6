namespace FermentWatch.Kitchen.Places;

/// <summary>The record of places.</summary>
public interface IPlaceBook
{
    /// <summary>All places, by shelf order.</summary>
    Task<IReadOnlyList<Place>> AllAsync(CancellationToken cancellationToken);

    Task AddAsync(Place place, CancellationToken cancellationToken);

    /// <summary>Writes name, order and typical temperature of a place that exists.</summary>
    Task ChangeAsync(Place place, CancellationToken cancellationToken);
}
