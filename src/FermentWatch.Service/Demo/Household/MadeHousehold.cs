namespace FermentWatch.Service.Demo.Household;

/// <summary>The household as it was made for this run.</summary>
/// <param name="OwnerPassword">The password of the one who signs in first.</param>
/// <param name="Sensors">Its sensors.</param>
internal sealed record MadeHousehold(string OwnerPassword, IReadOnlyList<MadeSensor> Sensors);
