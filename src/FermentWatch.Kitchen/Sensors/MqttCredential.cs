
namespace FermentWatch.Kitchen.Sensors;

/// <summary>A user and password for our broker. A sensor's may publish under its own topics, a gateway's under its filter.</summary>
public sealed class MqttCredential
{
    public required Guid Id { get; init; }

    /// <summary>User name, unique.</summary>
    public required string User { get; init; }

    /// <summary>Salted hash; the password itself is shown once and not kept.</summary>
    public required string PasswordHash { get; init; }

    /// <summary>MQTT topic filter under which it may publish.</summary>
    public required string TopicFilter { get; init; }

    /// <summary>The sensor it was made for; null for a gateway.</summary>
    public Guid? SensorId { get; init; }

    /// <summary>Who of the household made it on the pages or by the API, or keeps it; null where the command line did.</summary>
    public string? MadeBy { get; init; }
}
