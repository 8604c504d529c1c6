using NodaTime;

namespace FermentWatch.Service.Demo.Household;

/// <summary>A sensor that was added to the records, with what it needs to report.</summary>
/// <param name="Invented">The sensor.</param>
/// <param name="Password">The password of its credential.</param>
/// <param name="Since">Since when it has reported.</param>
/// <param name="CelsiusAt">What it would measure at an instant, Celsius.</param>
/// <param name="PhAt">The pH it would measure; null if it has no electrode.</param>
internal sealed record MadeSensor(
    InventedSensor Invented, string Password, Instant Since, Func<Instant, double> CelsiusAt, Func<Instant, double>? PhAt);
