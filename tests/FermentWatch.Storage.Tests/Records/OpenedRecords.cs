using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records;

/// <summary>Tests of a storage of their own, opened as the service opens it.</summary>
public abstract class OpenedRecords : IAsyncLifetime, IDisposable
{
    protected static readonly Instant Noon = Instant.FromUtc(2025, 10, 4, 12, 0);

    /// <summary>The household that a new database has is its first fact.</summary>
    protected const long RevisionOfANewDatabase = 1;

    private readonly TemporaryFolder _folder = new();
    private ServiceProvider _services = null!;

    protected string DatabasePath => _folder.File("records.db");

    public Task InitializeAsync()
    {
        _services = Open();
        return Task.CompletedTask;
    }

    /// <summary>The same folder opened once more, as another process would: nothing in memory is shared.</summary>
    protected ServiceProvider Open()
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(TimeProvider.System);
        Configure(services.AddFermentWatchStorage(new StorageOptions { Folder = _folder.Root }));
        ServiceProvider opened = services.BuildServiceProvider();
        opened.OpenStorage();
        return opened;
    }

    public async Task DisposeAsync() => await _services.DisposeAsync();

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }

    protected virtual void Configure(IServiceCollection services)
    {
    }

    protected async Task RestartAsync()
    {
        await DisposeAsync();
        await InitializeAsync();
    }

    protected T Get<T>()
        where T : notnull => _services.GetRequiredService<T>();

    protected AsyncServiceScope Scope() => _services.CreateAsyncScope();

    protected Task<long> RevisionAsync() => Get<IHouseholdBook>().RevisionAsync(default);

    private protected RecordsContext Context() => Get<IDbContextFactory<RecordsContext>>().CreateDbContext();

    protected async Task<Place> AddPlaceAsync(string name = "shelf", int order = 1)
    {
        var place = new Place { Id = Guid.CreateVersion7(), Name = name, ShelfOrder = order, Typical = TypicalTemperature.Usual };
        await Get<IPlaceBook>().AddAsync(place, default);
        return place;
    }

    protected Task<Sensor> AddSensorAsync(string slug, Guid? placeId = null)
    {
        var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = slug, Name = slug, AddedAt = Noon };
        if (placeId is not null)
            sensor.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = placeId, From = Noon });
        return Get<ISensorBook>().AddAsync(sensor, Credential(slug, sensor.Id), default);
    }

    protected static MqttCredential Credential(string user, Guid? sensorId) => new()
    {
        Id = Guid.CreateVersion7(), User = user, PasswordHash = "salted", TopicFilter = $"fermentwatch/sensor/{user}/#", SensorId = sensorId,
    };
}
