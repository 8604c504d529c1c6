using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Records.Conversions;
using FermentWatch.Storage.Records.Derived;
using FermentWatch.Storage.Records.Tables;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using NodaTime;

namespace FermentWatch.Storage.Records;

/// <summary>The records, records.db: facts of the household, who may sign in, keys, the outbox, and derived forecasts.</summary>
public sealed class RecordsContext(DbContextOptions<RecordsContext> options)
    : IdentityDbContext<Account, IdentityRole<Guid>, Guid>(options), IDataProtectionKeyContext
{
    /// <summary>What forecasts are derived from, besides readings.</summary>
    private static readonly Type[] Facts =
        [typeof(Household), typeof(Place), typeof(Sensor), typeof(SensorPlacement), typeof(Jar), typeof(JarPlacement), typeof(JarCorrection),
            typeof(Observation)];

    /// <inheritdoc/>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    internal DbSet<Household> Households => Set<Household>();

    internal DbSet<Place> Places => Set<Place>();

    internal DbSet<Sensor> Sensors => Set<Sensor>();

    internal DbSet<SensorPlacement> SensorPlacements => Set<SensorPlacement>();

    internal DbSet<MqttCredential> MqttCredentials => Set<MqttCredential>();

    internal DbSet<SourceRule> SourceRules => Set<SourceRule>();

    internal DbSet<SourceFeed> SourceFeeds => Set<SourceFeed>();

    internal DbSet<ProbeCheck> ProbeChecks => Set<ProbeCheck>();

    internal DbSet<RejudgeOrder> RejudgeOrders => Set<RejudgeOrder>();

    internal DbSet<Announcement> Announcements => Set<Announcement>();

    internal DbSet<Jar> Jars => Set<Jar>();

    internal DbSet<JarPlacement> JarPlacements => Set<JarPlacement>();

    internal DbSet<Observation> Observations => Set<Observation>();

    internal DbSet<Photo> Photos => Set<Photo>();

    internal DbSet<HouseholdRecipe> Recipes => Set<HouseholdRecipe>();

    internal DbSet<Round> Rounds => Set<Round>();

    internal DbSet<Notice> Notices => Set<Notice>();

    internal DbSet<NoticeRoute> NoticeRoutes => Set<NoticeRoute>();

    internal DbSet<ToldOccasion> ToldOccasions => Set<ToldOccasion>();

    internal DbSet<MutedKind> MutedKinds => Set<MutedKind>();

    internal DbSet<Duty> Duties => Set<Duty>();

    internal DbSet<HandOver> HandOvers => Set<HandOver>();

    internal DbSet<RoundPause> RoundPauses => Set<RoundPause>();

    internal DbSet<SignIn> SignIns => Set<SignIn>();

    internal DbSet<GuestLink> GuestLinks => Set<GuestLink>();

    internal DbSet<ScriptKey> ScriptKeys => Set<ScriptKey>();

    internal DbSet<ForecastRow> Forecasts => Set<ForecastRow>();

    internal DbSet<ForecastMarkRow> ForecastMarks => Set<ForecastMarkRow>();

    internal DbSet<ObservationEntry> ObservationEntries => Set<ObservationEntry>();

    internal DbSet<FactsRevision> FactsRevisions => Set<FactsRevision>();

    // The tables must not depend on what a host's options say.
    /// <inheritdoc/>
    protected override Version SchemaVersion => IdentitySchemaVersions.Version1;

    /// <summary>Saves; where facts change, their revision grows in the same transaction, and the jars among them bear it.</summary>
    public override async Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        if (!ChangesFacts())
            return await base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
        NumberObservations();
        Guid[] jars = ChangedJars();
        await using var own = Database.CurrentTransaction is null ? await Database.BeginTransactionAsync(cancellationToken) : null;
        int saved = await base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
        await FactsRevisions.ExecuteUpdateAsync(row => row.SetProperty(each => each.Facts, each => each.Facts + 1), cancellationToken);
        if (jars.Length > 0)
            await Jars.Where(jar => jars.Contains(jar.Id)).ExecuteUpdateAsync(row => row.SetProperty(
                jar => EF.Property<long>(jar, JarTable.ChangedAtRevision), _ =>
                    FactsRevisions.OrderBy(each => each.Id).Select(each => each.Facts).First()), cancellationToken);
        if (own is not null)
            await own.CommitAsync(cancellationToken);
        return saved;
    }

    /// <summary>As <see cref="SaveChangesAsync"/>; the keeper of keys saves this way.</summary>
    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        if (!ChangesFacts())
            return base.SaveChanges(acceptAllChangesOnSuccess);
        NumberObservations();
        Guid[] jars = ChangedJars();
        using var own = Database.CurrentTransaction is null ? Database.BeginTransaction() : null;
        int saved = base.SaveChanges(acceptAllChangesOnSuccess);
        FactsRevisions.ExecuteUpdate(row => row.SetProperty(each => each.Facts, each => each.Facts + 1));
        if (jars.Length > 0)
            Jars.Where(jar => jars.Contains(jar.Id)).ExecuteUpdate(row => row.SetProperty(
                jar => EF.Property<long>(jar, JarTable.ChangedAtRevision), _ =>
                    FactsRevisions.OrderBy(each => each.Id).Select(each => each.Facts).First()));
        own?.Commit();
        return saved;
    }

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        configurationBuilder.Properties<Instant>().HaveConversion<InstantConverter>();
        configurationBuilder.Properties<Duration>().HaveConversion<DurationConverter>();
        configurationBuilder.Properties<LocalDate>().HaveConversion<LocalDateConverter>();
        configurationBuilder.Properties<LocalTime>().HaveConversion<LocalTimeConverter>();
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(RecordsContext).Assembly);
    }

    /// <summary>Gives each new observation its place in the order of entry, within the same transaction.</summary>
    private void NumberObservations()
    {
        foreach (var added in ChangeTracker.Entries<Observation>().Where(entry => entry.State == EntityState.Added).ToList())
            ObservationEntries.Add(new ObservationEntry { ObservationId = added.Entity.Id });
    }

    /// <summary>The jars of which anything is about to be written.</summary>
    private Guid[] ChangedJars() =>
        [.. ChangeTracker.Entries().Where(entry => entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted)
        .Select(entry => entry.Entity switch
        {
            Jar jar => jar.Id,
            JarPlacement placement => placement.JarId,
            JarCorrection correction => correction.JarId,
            Observation observation => observation.JarId,
            _ => (Guid?)null,
        }).OfType<Guid>().Distinct()];

    private bool ChangesFacts() => ChangeTracker.Entries().Any(entry =>
        entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted
        && Facts.Any(fact => fact.IsInstanceOfType(entry.Entity)));
}

/// <summary>Lets the tool that writes migrations make a context; it reads the model and opens no file.</summary>
internal sealed class RecordsContextDesign : IDesignTimeDbContextFactory<RecordsContext>
{
    public RecordsContext CreateDbContext(string[] args) => RecordsConnection.Context("design.db", SqliteOpenMode.Memory);
}
