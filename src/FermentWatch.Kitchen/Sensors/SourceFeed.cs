namespace FermentWatch.Kitchen.Sensors;

/// <summary>A rule has fed a sensor: what a rule says of range and silence holds for the sensors it has fed.</summary>
/// <param name="RuleId">The rule.</param>
/// <param name="SensorId">The sensor.</param>
public sealed record SourceFeed(Guid RuleId, Guid SensorId);
