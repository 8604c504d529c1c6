namespace FermentWatch.Service.Demo.Household;

/// <summary>A sensor of the invented household.</summary>
/// <param name="Slug">Its name in topics.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Room">The room it measures, or in which the jar with its probe stands.</param>
/// <param name="InJar">The jar its probe is in, by the jar's name; null if it measures the room.</param>
/// <param name="Period">How often it reports while the demo runs.</param>
internal sealed record InventedSensor(string Slug, string Name, string Room, string? InJar, TimeSpan Period);
