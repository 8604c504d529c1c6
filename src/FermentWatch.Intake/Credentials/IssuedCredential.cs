using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Credentials;

/// <summary>A new credential with its password, which can be shown now and never again.</summary>
public sealed record IssuedCredential(MqttCredential Credential, string Password);
