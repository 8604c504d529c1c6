namespace FermentWatch.Service.Api;

/// <summary>All well.</summary>
/// <param name="PlaceId">The shelf; null for every shelf.</param>
/// <param name="Except">Numbers that are left open.</param>
/// <param name="Opened">Whether the jars were opened.</param>
public sealed record AllWellForm(Guid? PlaceId, IReadOnlyList<int>? Except, bool Opened);
