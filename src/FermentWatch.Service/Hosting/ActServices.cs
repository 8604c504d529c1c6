using FermentWatch.Acts;
using FermentWatch.Acts.Histories;
using FermentWatch.Acts.Households;
using FermentWatch.Acts.Jars;
using FermentWatch.Acts.Members;
using FermentWatch.Acts.Notices;
using FermentWatch.Acts.Photos;
using FermentWatch.Acts.Planning;
using FermentWatch.Acts.Recipes;
using FermentWatch.Acts.Rounds;
using FermentWatch.Acts.Sensors;
using FermentWatch.Intake.Credentials;
using FermentWatch.Intake.Sources;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Service.Hosting;

/// <summary>What people and devices can do and ask. Needs the books of Storage beside it.</summary>
internal static class ActServices
{
    /// <summary>The acts of the running service, which renews forecasts at once.</summary>
    public static IServiceCollection AddActsOfTheService(this IServiceCollection services) => services.AddActs()
        .AddSingleton<ForecastRenewal>().AddSingleton<IForecastRenewal>(provider => provider.GetRequiredService<ForecastRenewal>());

    /// <summary>The acts; whoever registers them says beside them who renews forecasts.</summary>
    public static IServiceCollection AddActs(this IServiceCollection services) => services
        .AddSingleton<ICredentialIssuer, CredentialIssuer>().AddSingleton<ISourceRuleCheck, SourceRuleCheck>()
        .AddSingleton<EntryFiling>().AddSingleton<RoundFiling>()
        .AddSingleton<PutUpJars>().AddSingleton<WeighSalt>().AddSingleton<AskPlan>()
            .AddSingleton<CorrectJar>().AddSingleton<MeasurePh>().AddSingleton<TitrateBrine>()
        .AddSingleton<MoveJar>().AddSingleton<TakePortion>().AddSingleton<OpenJar>().AddSingleton<TakeBackMove>().AddSingleton<TakeBackEntry>()
        .AddSingleton<SayAllWell>().AddSingleton<AnswerBoard>().AddSingleton<ReportSeen>().AddSingleton<ReportTaste>().AddSingleton<SettleTrouble>()
        .AddSingleton<ChangeStage>().AddSingleton<PauseTasting>().AddSingleton<HandOverRound>().AddSingleton<EnterWeekSheet>()
            .AddSingleton<AnswerByLink>().AddSingleton<PauseRounds>()
        .AddSingleton<ExportHousehold>().AddSingleton<DescribeHousehold>().AddSingleton<DescribePlace>()
            .AddSingleton<ShareDuties>().AddSingleton<InviteGuest>()
            .AddScoped<ManageMembers>().AddSingleton<IssueScriptKey>()
        .AddScoped<AccountReader>().AddScoped<FoundHousehold>().AddSingleton<KeepSignedIn>()
        .AddSingleton<ReachPeople>().AddSingleton<MuteOccasion>().AddSingleton<CalendarAddress>().AddSingleton<TellPhone>()
        .AddSingleton<GiveSensor>().AddSingleton<ReadByRule>().AddSingleton<TakeOffer>().AddSingleton<CheckProbe>().AddSingleton<AdmitGear>()
            .AddSingleton<AddSensor>().AddSingleton<ChangeSensor>().AddSingleton<TakeOldReadings>()
        .AddSingleton<KeepPhoto>().AddSingleton<PhotoReader>().AddSingleton<LookBack>().AddSingleton<AskWhatIf>().AddSingleton<AskSaltMend>()
            .AddSingleton<AskBrine>().AddSingleton<KeepRecipe>().AddSingleton<RecipeReader>()
        .AddSingleton<HouseholdReader>().AddSingleton<ReadyPlaces>().AddSingleton<ReadyStarters>().AddSingleton<JarReader>()
            .AddSingleton<ColdStoreReader>()
            .AddSingleton<SensorReader>().AddSingleton<HistoryReader>().AddSingleton<AskHistory>().AddSingleton<CourseReader>()
            .AddSingleton<BesideReader>().AddSingleton<RoundReader>();
}
