namespace FermentWatch.Kitchen.Forwarding;

/// <summary>How many points of a series were left out for one reason.</summary>
/// <param name="Series">The series.</param>
/// <param name="Last">The last of them.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record NotForwardedCount(SeriesKind Series, NotForwarded Last, long Count);
