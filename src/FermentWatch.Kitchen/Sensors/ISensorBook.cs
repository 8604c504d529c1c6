using FermentWatch.Kitchen.Members;
namespace FermentWatch.Kitchen.Sensors;

/// <summary>The record of sensors and of who may publish what.</summary>
public interface ISensorBook
{
    /// <summary>All sensors with their placements, also those taken out of service.</summary>
    Task<IReadOnlyList<Sensor>> AllAsync(CancellationToken cancellationToken);

    /// <summary>The sensor in service with this slug, or null.</summary>
    Task<Sensor?> FindAsync(string slug, CancellationToken cancellationToken);

    /// <summary>Adds a sensor with its credential in one step and returns it with the key it was given.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="credential">Its credential; null where something else publishes for it, a gateway or a broker of the household's.</param>
    /// <param name="cancellationToken">Gives up before anything is stored.</param>
    Task<Sensor> AddAsync(Sensor sensor, MqttCredential? credential, CancellationToken cancellationToken);

    /// <summary>Adds a gateway's credential.</summary>
    Task AddGatewayAsync(MqttCredential credential, CancellationToken cancellationToken);

    /// <summary>Deletes a gateway's credential; what it published stays. False if there is no gateway of that user name.</summary>
    Task<bool> RemoveGatewayAsync(string user, CancellationToken cancellationToken);

    /// <summary>Notes who answers for a gateway's credential from now on. False if there is no gateway of that user name.</summary>
    Task<bool> KeepGatewayAsync(string user, Person by, CancellationToken cancellationToken);

    /// <summary>The credentials of gateways.</summary>
    Task<IReadOnlyList<MqttCredential>> GatewaysAsync(CancellationToken cancellationToken);

    /// <summary>The credential with this user name, or null.</summary>
    Task<MqttCredential?> CredentialAsync(string user, CancellationToken cancellationToken);

    /// <summary>Records where a sensor stands from an instant on.</summary>
    Task PlaceAsync(SensorPlacement placement, CancellationToken cancellationToken);

    /// <summary>Calls a sensor something else from now on; its name in topics stays.</summary>
    Task RenameAsync(Guid sensorId, string name, CancellationToken cancellationToken);

    /// <summary>Puts a credential in the place of the one its sensor had, which lets nobody in any more.</summary>
    Task RenewCredentialAsync(MqttCredential credential, CancellationToken cancellationToken);

    /// <summary>Takes a sensor out of service and deletes its credential; its readings stay.</summary>
    Task RemoveAsync(Guid sensorId, NodaTime.Instant at, CancellationToken cancellationToken);
}
