using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Acts.Sensors;

/// <summary>Renames a sensor, gives it another password, and takes it out of service.</summary>
public sealed class ChangeSensor(ISensorBook sensors, AdmitGear gear, ICredentialIssuer issuer, WrittenDown written)
{
    /// <summary>Calls it something else; its name in topics stays, as the gear is set up with that. What was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> RenameAsync(Sensor sensor, string? name, CancellationToken cancellationToken)
    {
        if (AdmitGear.WrongName(name) is { } wrong)
            return [wrong];
        await sensors.RenameAsync(sensor.Id, name!.Trim(), cancellationToken);
        written.SayFacts();
        return [];
    }

    /// <summary>Gives it another password; whoever came in with the one before is sent away.</summary>
    public async Task<(AddedSensor? Added, IReadOnlyList<Refusal> Refusals)> NewPasswordAsync(Sensor sensor, CancellationToken cancellationToken)
    {
        if (!await HasPasswordAsync(sensor, cancellationToken))
            return (null, [new Refusal("password", sensor.Name, "it has none: something else publishes for it, and that has the password")]);
        IssuedCredential issued = issuer.ForSensor(sensor);
        await sensors.RenewCredentialAsync(issued.Credential, cancellationToken);
        return (new AddedSensor(sensor, issued), []);
    }

    /// <summary>Whether it comes to our broker itself, with a password of its own.</summary>
    public async Task<bool> HasPasswordAsync(Sensor sensor, CancellationToken cancellationToken) =>
        await sensors.CredentialAsync(sensor.Slug, cancellationToken) is { } credential && credential.SensorId == sensor.Id;

    /// <summary>Takes it out of service and its password away; its readings stay.</summary>
    public async Task RetireAsync(Sensor sensor, CancellationToken cancellationToken)
    {
        await gear.RemoveAsync(sensor, cancellationToken);
        written.SayFacts();
    }
}
