using FermentWatch.Intake.Credentials;
using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.DoorHost;

/// <summary>A book that knows the sensor <c>cellar</c>, key 1, and a password for it.</summary>
internal sealed class OneSensor(string password) : ISensorBook
{
    private readonly Sensor _sensor =
        new() { Id = Guid.CreateVersion7(), Key = 1, Slug = "cellar", Name = "Cellar", AddedAt = Instant.FromUnixTimeSeconds(0) };
    private readonly string _hash = SensorPassword.Hash(password);

    public Task<Sensor?> FindAsync(string slug, CancellationToken cancellationToken) =>
        Task.FromResult(slug == _sensor.Slug ? _sensor : null);

    public Task<MqttCredential?> CredentialAsync(string user, CancellationToken cancellationToken) =>
        Task.FromResult(user == _sensor.Slug
            ? new MqttCredential { Id = _sensor.Id, User = user, PasswordHash = _hash, TopicFilter = OwnTopic.FilterFor(user), SensorId = _sensor.Id }
            : null);

    public Task<IReadOnlyList<Sensor>> AllAsync(CancellationToken cancellationToken) => Task.FromResult<IReadOnlyList<Sensor>>([_sensor]);

    public Task<IReadOnlyList<MqttCredential>> GatewaysAsync(CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<MqttCredential>>([]);

    public Task<Sensor> AddAsync(Sensor sensor, MqttCredential? credential, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task AddGatewayAsync(MqttCredential credential, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RenameAsync(Guid sensorId, string name, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RenewCredentialAsync(MqttCredential credential, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task PlaceAsync(SensorPlacement placement, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<bool> RemoveGatewayAsync(string user, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<bool> KeepGatewayAsync(string user, Person by, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RemoveAsync(Guid sensorId, Instant at, CancellationToken cancellationToken) => throw new NotSupportedException();
}
