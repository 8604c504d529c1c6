using System.Collections.Concurrent;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Intake.Tests.Doubles;

/// <summary>A record of sensors in memory.</summary>
public sealed class MemorySensorBook : ISensorBook
{
    private readonly ConcurrentDictionary<string, Sensor> _sensors = new();
    private readonly ConcurrentDictionary<string, MqttCredential> _credentials = new();
    private int _lastKey;
    private int _queries;

    /// <summary>How often a sensor was looked up.</summary>
    public int Queries => _queries;

    public Task<IReadOnlyList<Sensor>> AllAsync(CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<Sensor>>([.. _sensors.Values]);

    public Task<Sensor?> FindAsync(string slug, CancellationToken cancellationToken)
    {
        Interlocked.Increment(ref _queries);
        return Task.FromResult(_sensors.Values.FirstOrDefault(sensor => sensor.Slug == slug && sensor.RemovedAt is null));
    }

    public Task<Sensor> AddAsync(Sensor sensor, MqttCredential? credential, CancellationToken cancellationToken)
    {
        var added = new Sensor
        {
            Id = sensor.Id, Key = Interlocked.Increment(ref _lastKey), Slug = sensor.Slug, Name = sensor.Name, AddedAt = sensor.AddedAt,
        };
        _sensors[added.Slug] = added;
        if (credential is not null)
            _credentials[credential.User] = credential;
        return Task.FromResult(added);
    }

    public Task AddGatewayAsync(MqttCredential credential, CancellationToken cancellationToken)
    {
        _credentials[credential.User] = credential;
        return Task.CompletedTask;
    }

    public Task<bool> RemoveGatewayAsync(string user, CancellationToken cancellationToken) =>
        Task.FromResult(_credentials.GetValueOrDefault(user) is { SensorId: null } && _credentials.TryRemove(user, out _));

    public Task<bool> KeepGatewayAsync(string user, Person by, CancellationToken cancellationToken) =>
        Task.FromResult(_credentials.ContainsKey(user));

    public Task<IReadOnlyList<MqttCredential>> GatewaysAsync(CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<MqttCredential>>([.. _credentials.Values.Where(credential => credential.SensorId is null)]);

    public Task<MqttCredential?> CredentialAsync(string user, CancellationToken cancellationToken) =>
        Task.FromResult(_credentials.GetValueOrDefault(user));

    public Task PlaceAsync(SensorPlacement placement, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RenameAsync(Guid sensorId, string name, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RenewCredentialAsync(MqttCredential credential, CancellationToken cancellationToken)
    {
        _credentials[credential.User] = credential;
        return Task.CompletedTask;
    }

    public Task RemoveAsync(Guid sensorId, Instant at, CancellationToken cancellationToken)
    {
        Sensor sensor = _sensors.Values.Single(known => known.Id == sensorId);
        sensor.RemovedAt = at;
        foreach (MqttCredential credential in _credentials.Values.Where(credential => credential.SensorId == sensorId))
            _credentials.TryRemove(credential.User, out _);
        return Task.CompletedTask;
    }
}
