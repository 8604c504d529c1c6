using NodaTime;

namespace FermentWatch.Intake.Door;

/// <summary>What a sensor, or the last will it left with a broker, last said of itself.</summary>
public sealed record SensorPresence(bool IsOnline, Instant Since);
