namespace FermentWatch.Kitchen.Sensors;

/// <summary>Where a sensor finds our broker.</summary>
/// <param name="Host">An address of this machine.</param>
/// <param name="Port">The port.</param>
/// <param name="Tls">Whether it must speak TLS there.</param>
/// <param name="IsOn">Whether our broker listens at all.</param>
public sealed record BrokerAddress(string Host, int Port, bool Tls = false, bool IsOn = true);
