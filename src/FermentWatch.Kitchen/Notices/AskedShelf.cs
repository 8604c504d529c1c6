namespace FermentWatch.Kitchen.Notices;

/// <summary>The jars of one place that a notice asks about.</summary>
/// <param name="PlaceId">The place.</param>
/// <param name="Place">Its name, as it stood in the notice.</param>
/// <param name="Jars">Numbers of the jars, in order.</param>
/// <param name="ToOpen">Numbers of those that were to be opened.</param>
public sealed record AskedShelf(Guid PlaceId, string Place, IReadOnlyList<int> Jars, IReadOnlyList<int> ToOpen);
