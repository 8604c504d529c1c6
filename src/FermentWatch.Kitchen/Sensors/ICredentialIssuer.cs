namespace FermentWatch.Kitchen.Sensors;

/// <summary>Makes credentials for our broker.</summary>
public interface ICredentialIssuer
{
    /// <summary>A credential with which a sensor may publish under its own topics. Its user name is the sensor's slug.</summary>
    IssuedCredential ForSensor(Sensor sensor);

    /// <summary>A credential with which a gateway may publish under a topic filter.</summary>
    /// <exception cref="ArgumentException">The filter is no MQTT topic filter; <see cref="Topics.TopicFilter.WhatIsWrong"/> says beforehand.</exception>
    IssuedCredential ForGateway(string user, string filter, string? madeBy = null);
}

/// <summary>A new credential with its password, which can be shown now and never again.</summary>
public sealed record IssuedCredential(MqttCredential Credential, string Password);
