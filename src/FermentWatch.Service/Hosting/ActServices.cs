using FermentWatch.Acts;
using FermentWatch.Acts.Histories;
using FermentWatch.Acts.Households;
using FermentWatch.Acts.Jars;
using FermentWatch.Acts.Members;
using FermentWatch.Acts.Notices;
using FermentWatch.Acts.Photos;
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
        .AddSingleton<PutUpJars>().AddSingleton<WeighSalt>().AddSingleton<CorrectJar>().AddSingleton<MeasurePh>().AddSingleton<TitrateBrine>()
        .AddSingleton<MoveJar>().AddSingleton<TakeBackMove>().AddSingleton<TakeBackEntry>()
        .AddSingleton<SayAllWell>().AddSingleton<AnswerBoard>().AddSingleton<ReportSeen>().AddSingleton<ReportTaste>().AddSingleton<SettleTrouble>()
        .AddSingleton<ChangeStage>().AddSingleton<PauseTasting>().AddSingleton<HandOverRound>().AddSingleton<EnterWeekSheet>()
            .AddSingleton<AnswerByLink>().AddSingleton<PauseRounds>()
        .AddSingleton<DescribeHousehold>().AddSingleton<DescribePlace>().AddSingleton<ShareDuties>().AddSingleton<InviteGuest>()
            .AddScoped<ManageMembers>()
        .AddScoped<AccountReader>().AddScoped<FoundHousehold>().AddSingleton<KeepSignedIn>()
        .AddSingleton<ReachPeople>().AddSingleton<MuteOccasion>().AddSingleton<CalendarAddress>().AddSingleton<TellPhone>()
        .AddSingleton<GiveSensor>().AddSingleton<ReadByRule>().AddSingleton<TakeOffer>().AddSingleton<CheckProbe>().AddSingleton<AdmitGear>()
            .AddSingleton<AddSensor>().AddSingleton<ChangeSensor>()
        .AddSingleton<KeepPhoto>().AddSingleton<PhotoReader>().AddSingleton<LookBack>()
        .AddSingleton<HouseholdReader>().AddSingleton<ReadyPlaces>().AddSingleton<ReadyStarters>().AddSingleton<JarReader>()
            .AddSingleton<SensorReader>().AddSingleton<HistoryReader>().AddSingleton<AskHistory>().AddSingleton<CourseReader>()
            .AddSingleton<BesideReader>().AddSingleton<RoundReader>();
}
