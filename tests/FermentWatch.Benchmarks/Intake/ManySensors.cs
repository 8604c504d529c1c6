using System.Globalization;
using FermentWatch.Intake.Credentials;
using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Benchmarks.Intake;

/// <summary>A book of sensors <c>bench-0</c>, <c>bench-1</c> and so on, with one password for all.</summary>
internal sealed class ManySensors : ISensorBook
{
    private readonly string _hash;

    public ManySensors() => _hash = SensorPassword.Hash(Password);

    public string Password { get; } = SensorPassword.Generate();

    public static string Slug(int index) => string.Create(CultureInfo.InvariantCulture, $"bench-{index}");

    public Task<Sensor?> FindAsync(string slug, CancellationToken cancellationToken) => Task.FromResult<Sensor?>(new Sensor
    {
        Id = Guid.Empty, Key = int.Parse(slug.Split('-')[1], CultureInfo.InvariantCulture) + 1, Slug = slug, Name = slug,
        AddedAt = Instant.FromUnixTimeSeconds(0),
    });

    public Task<MqttCredential?> CredentialAsync(string user, CancellationToken cancellationToken) => Task.FromResult<MqttCredential?>(
        new MqttCredential { Id = Guid.Empty, User = user, PasswordHash = _hash, TopicFilter = OwnTopic.FilterFor(user), SensorId = Guid.Empty });

    public Task<IReadOnlyList<Sensor>> AllAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<Sensor> AddAsync(Sensor sensor, MqttCredential? credential, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task AddGatewayAsync(MqttCredential credential, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<MqttCredential>> GatewaysAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RenameAsync(Guid sensorId, string name, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RenewCredentialAsync(MqttCredential credential, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task PlaceAsync(SensorPlacement placement, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<bool> RemoveGatewayAsync(string user, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<bool> KeepGatewayAsync(string user, Person by, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RemoveAsync(Guid sensorId, Instant at, CancellationToken cancellationToken) => throw new NotSupportedException();
}
