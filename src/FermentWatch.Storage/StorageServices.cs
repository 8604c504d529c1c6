using FermentWatch.Kitchen.Archives;
using FermentWatch.Kitchen.Calendar;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Archives;
using FermentWatch.Storage.Archives.Taking;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using FermentWatch.Storage.Records.Books;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Storage;

/// <summary>The storage room's door for the service.</summary>
public static class StorageServices
{
    private const int ShortestPassword = 10;

    /// <summary>
    /// Registers the reading log, the books, the records' context (also for Identity's stores) and the keeping of Data Protection
    /// keys in the records. Nothing is opened before <see cref="OpenStorage"/>. Needs a <see cref="TimeProvider"/> beside it.
    /// </summary>
    /// <exception cref="ArgumentException">The options have errors; ask <see cref="StorageOptions.Errors"/> first.</exception>
    public static IServiceCollection AddFermentWatchStorage(this IServiceCollection services, StorageOptions options)
    {
        if (options.Errors().ToList() is { Count: > 0 } errors)
            throw new ArgumentException(string.Join(' ', errors), nameof(options));
        services.AddSingleton(options).AddSingleton<StorageRemarks>().AddSingleton<DiskRoom>().AddSingleton<IDiskTrouble, StorageTrouble>()
            .AddSingleton<OpenMark>();

        services.AddSingleton(_ => ReadingStore.Open(options.ReadingsPath));
        services.AddSingleton<IReadingIntake>(provider => provider.GetRequiredService<ReadingStore>());
        services.AddSingleton<IReadingLog>(provider => provider.GetRequiredService<ReadingStore>().Log);
        services.AddSingleton<IReadingHistory>(provider => provider.GetRequiredService<ReadingStore>().Histories);
        services.AddSingleton<IForwardLog<Reading>>(provider => provider.GetRequiredService<ReadingStore>().Counted);
        services.AddSingleton<IEstimateLog>(provider => provider.GetRequiredService<ReadingStore>().Estimates);
        services.AddSingleton<IForwardCursors>(provider => provider.GetRequiredService<ReadingStore>().ForwardCursors);
        services.AddSingleton<IForwardLog<LoggedObservation>, ObservationLog>();

        services.AddSingleton<IHouseholdArchive, HouseholdArchive>();
        services.AddDbContextFactory<RecordsContext>(builder => RecordsConnection.Configure(builder, options.RecordsPath));
        services.AddSingleton<IHouseholdBook, HouseholdBook>();
        services.AddSingleton<IPlaceBook, PlaceBook>();
        services.AddSingleton<IRecipeBook, RecipeBook>();
        services.AddSingleton<ISensorBook, SensorBook>();
        services.AddSingleton<ISourceRuleBook, SourceRuleBook>();
        services.AddSingleton<IProbeBook, ProbeBook>();
        services.AddSingleton<IRejudgeBook, RejudgeBook>();
        services.AddSingleton<IAnnouncementBook, AnnouncementBook>();
        services.AddSingleton<IJarBook, JarBook>();
        services.AddSingleton<IPhotoBook, PhotoBook>();
        services.AddSingleton<IForecastBook, ForecastBook>();
        services.AddSingleton<IRoundBook, RoundBook>();
        services.AddSingleton<INoticeBook, NoticeBook>();
        services.AddSingleton<IPushKeyBook, PushKeyBook>();
        services.AddSingleton<IOccasionBook, OccasionBook>();
        services.AddSingleton<IMemberBook, MemberBook>();
        services.AddSingleton<ISignInBook, SignInBook>();
        services.AddSingleton<IGuestBook, GuestBook>();
        services.AddSingleton<IScriptKeyBook, ScriptKeyBook>();
        services.AddSingleton<ICalendarFeedBook, CalendarFeedBook>();

        services.AddIdentityCore<Account>(options =>
        {
            // Length is what makes a password hard to guess; rules on signs only make it hard to type with wet hands.
            options.Password = new PasswordOptions
            {
                RequiredLength = ShortestPassword, RequiredUniqueChars = 4,
                RequireDigit = false, RequireLowercase = false, RequireUppercase = false, RequireNonAlphanumeric = false,
            };
            options.User.RequireUniqueEmail = false;
            // A name as people write it: Identity's default knows Latin letters only.
            options.User.AllowedUserNameCharacters = "";
        }).AddEntityFrameworkStores<RecordsContext>();
        services.AddScoped<IAccountBook, AccountBook>();
        services.AddDataProtection().SetApplicationName("FermentWatch").PersistKeysToDbContext<RecordsContext>();
        return services;
    }

    /// <summary>Opens both databases: makes new ones, brings older ones up to date (a copy is kept beside), refuses others.</summary>
    /// <exception cref="DatabaseRefusedException">A file is foreign, half-written, from a newer version, or not of this pair.</exception>
    /// <exception cref="IOException">The folder cannot be read or written.</exception>
    /// <param name="provider">The services.</param>
    /// <param name="asService">Whether this is the one process that runs the service, and not a verb beside it.</param>
    public static void OpenStorage(this IServiceProvider provider, bool asService = false)
    {
        var options = provider.GetRequiredService<StorageOptions>();
        PreparedHousehold.MoveIn(options);
        DatabasePair.Check(options);
        RecordsDatabase.CreateOrUpgrade(options.RecordsPath, provider.GetRequiredService<TimeProvider>());
        ReadingSchema.CreateOrCheck(options.ReadingsPath);
        DatabasePair.Join(options);
        if (NetworkShare.Remark(options.Folder) is { } share)
            provider.GetRequiredService<StorageRemarks>().Add(share);
        // Before the store, so that it is disposed of after it.
        if (asService)
            provider.GetRequiredService<OpenMark>();
        provider.GetRequiredService<ReadingStore>();
    }
}
