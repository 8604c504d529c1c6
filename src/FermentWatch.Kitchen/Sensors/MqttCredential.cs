using FermentWatch.Kitchen.Members;

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

    /// <summary>The account of that person; null where <see cref="MadeBy"/> is, and where it was not noted.</summary>
    public Guid? MadeById { get; init; }
}

/// <summary>Makes credentials for our broker.</summary>
public interface ICredentialIssuer
{
    /// <summary>A credential with which a sensor may publish under its own topics. Its user name is the sensor's slug.</summary>
    IssuedCredential ForSensor(Sensor sensor);

    /// <summary>A credential with which a gateway may publish under a topic filter.</summary>
    /// <exception cref="ArgumentException">The filter is no MQTT topic filter; <see cref="Topics.TopicFilter.WhatIsWrong"/> says
    /// beforehand.</exception>
    IssuedCredential ForGateway(string user, string filter, Person? madeBy = null);
}

/// <summary>A new credential with its password, which can be shown now and never again.</summary>
public sealed record IssuedCredential(MqttCredential Credential, string Password);

/// <summary>Where a sensor finds our broker.</summary>
/// <param name="Host">An address of this machine.</param>
/// <param name="Port">The port.</param>
/// <param name="Tls">Whether it must speak TLS there.</param>
/// <param name="IsOn">Whether our broker listens at all.</param>
public sealed record BrokerAddress(string Host, int Port, bool Tls = false, bool IsOn = true);
