using NodaTime;

namespace FermentWatch.Service.Demo.Household;

/// <summary>The household as it was made for this run.</summary>
/// <param name="OwnerPassword">The password of the one who signs in first.</param>
/// <param name="Sensors">Its sensors.</param>
internal sealed record MadeHousehold(string OwnerPassword, IReadOnlyList<MadeSensor> Sensors);

/// <summary>A sensor that was added to the records, with what it needs to report.</summary>
/// <param name="Invented">The sensor.</param>
/// <param name="Password">The password of its credential.</param>
/// <param name="Since">Since when it has reported.</param>
/// <param name="CelsiusAt">What it would measure at an instant, Celsius.</param>
/// <param name="PhAt">The pH it would measure; null if it has no electrode.</param>
internal sealed record MadeSensor(
    InventedSensor Invented, string Password, Instant Since, Func<Instant, double> CelsiusAt, Func<Instant, double>? PhAt);
