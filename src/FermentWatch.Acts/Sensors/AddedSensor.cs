using FermentWatch.Intake.Credentials;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Acts.Sensors;

/// <summary>A sensor or gateway that was added, with the password that can be shown now and never again.</summary>
/// <param name="Sensor">The sensor; null for a gateway.</param>
/// <param name="Issued">Its credential and password.</param>
internal sealed record AddedSensor(Sensor? Sensor, IssuedCredential Issued);
