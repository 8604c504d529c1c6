using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="ISensorBook"/>
internal sealed class SensorBook(IDbContextFactory<RecordsContext> contexts, IReadingLog log) : ISensorBook
{
    public async Task<IReadOnlyList<Sensor>> AllAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await WithPlacements(context).OrderBy(sensor => sensor.Key).ToListAsync(cancellationToken);
    }

    public async Task<Sensor?> FindAsync(string slug, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await WithPlacements(context)
            .SingleOrDefaultAsync(sensor => sensor.Slug == slug && sensor.RemovedAt == null, cancellationToken);
    }

    /// <exception cref="NameTakenException">A sensor in service has the slug, or a credential the user name.</exception>
    public async Task<Sensor> AddAsync(Sensor sensor, MqttCredential? credential, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        int lastKey = await context.Sensors.MaxAsync(each => (int?)each.Key, cancellationToken) ?? 0;
        // Records restored from an older backup do not know sensors whose readings are still there.
        int lastFiled = await log.LastSensorKeyAsync(cancellationToken);
        context.Sensors.Add(sensor).Property(each => each.Key).CurrentValue = Math.Max(lastKey, lastFiled) + 1;
        if (credential is not null)
            context.MqttCredentials.Add(credential);
        await context.SaveNamedAsync("sensor", sensor.Slug, cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return sensor;
    }

    /// <exception cref="NameTakenException">A credential has the user name.</exception>
    public async Task AddGatewayAsync(MqttCredential credential, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.MqttCredentials.Add(credential);
        await context.SaveNamedAsync("user", credential.User, cancellationToken);
    }

    public async Task<bool> RemoveGatewayAsync(string user, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.MqttCredentials
            .Where(credential => credential.User == user && credential.SensorId == null).ExecuteDeleteAsync(cancellationToken) > 0;
    }

    public async Task<bool> KeepGatewayAsync(string user, Person by, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.MqttCredentials.Where(credential => credential.User == user && credential.SensorId == null)
            .ExecuteUpdateAsync(row => row.SetProperty(credential => credential.MadeBy, by.Name).SetProperty(credential => credential.MadeById,
                by.AccountId), cancellationToken) > 0;
    }

    public async Task<IReadOnlyList<MqttCredential>> GatewaysAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.MqttCredentials.AsNoTracking()
            .Where(credential => credential.SensorId == null).OrderBy(credential => credential.User).ToListAsync(cancellationToken);
    }

    public async Task<MqttCredential?> CredentialAsync(string user, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.MqttCredentials.AsNoTracking().SingleOrDefaultAsync(credential => credential.User == user, cancellationToken);
    }

    public async Task PlaceAsync(SensorPlacement placement, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.SensorPlacements.Add(placement);
        await context.SaveChangesAsync(cancellationToken);
    }

    public async Task RenameAsync(Guid sensorId, string name, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.Sensors.Where(sensor => sensor.Id == sensorId).ExecuteUpdateAsync(row => row.SetProperty(sensor => sensor.Name, name),
            cancellationToken);
    }

    public async Task RenewCredentialAsync(MqttCredential credential, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.MqttCredentials.Where(each => each.SensorId == credential.SensorId).ExecuteDeleteAsync(cancellationToken);
        context.MqttCredentials.Add(credential);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    /// <exception cref="InvalidOperationException">There is no sensor of this id.</exception>
    public async Task RemoveAsync(Guid sensorId, Instant at, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var sensor = await context.Sensors.SingleAsync(each => each.Id == sensorId, cancellationToken);
        sensor.RemovedAt ??= at;
        var credentials = await context.MqttCredentials.Where(credential => credential.SensorId == sensorId).ToListAsync(cancellationToken);
        context.MqttCredentials.RemoveRange(credentials);
        await context.SaveChangesAsync(cancellationToken);
    }

    private static IQueryable<Sensor> WithPlacements(RecordsContext context) =>
        context.Sensors.AsNoTracking().Include(sensor => sensor.Placements.OrderBy(placement => placement.From).ThenBy(placement => placement.Id));
}
