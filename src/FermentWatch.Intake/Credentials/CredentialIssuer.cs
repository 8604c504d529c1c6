using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Intake.Credentials;

/// <inheritdoc/>
public sealed class CredentialIssuer : ICredentialIssuer
{
    /// <summary>A credential with which a sensor may publish under its own topics. Its user name is the sensor's slug.</summary>
    public IssuedCredential ForSensor(Sensor sensor) => Issue(sensor.Slug, OwnTopic.FilterFor(sensor.Slug), sensor.Id);

    /// <summary>A credential with which a gateway may publish under a topic filter.</summary>
    /// <exception cref="ArgumentException">The filter is no MQTT topic filter; <see cref="TopicFilter.WhatIsWrong"/> says beforehand.</exception>
    public IssuedCredential ForGateway(string user, string filter, Person? madeBy = null) =>
        TopicFilter.WhatIsWrong(filter) is { } wrong
            ? throw new ArgumentException(wrong, nameof(filter))
            : Issue(user, filter, null, madeBy);

    private static IssuedCredential Issue(string user, string filter, Guid? sensorId, Person? madeBy = null)
    {
        string password = SensorPassword.Generate();
        var credential = new MqttCredential
        {
            Id = Guid.CreateVersion7(),
            User = user,
            PasswordHash = SensorPassword.Hash(password),
            TopicFilter = filter,
            SensorId = sensorId,
            MadeBy = madeBy?.Name, MadeById = madeBy?.AccountId,
        };
        return new IssuedCredential(credential, password);
    }
}
