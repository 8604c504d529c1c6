using FermentWatch.Acts;
using FermentWatch.Acts.Households;
using FermentWatch.Acts.Jars;
using FermentWatch.Acts.Members;
using FermentWatch.Acts.Notices;
using FermentWatch.Acts.Rounds;
using FermentWatch.Acts.Sensors;

namespace FermentWatch.Service.Hosting;

/// <summary>What people and devices can do and ask. Needs the books of Storage beside it.</summary>
internal static class ActServices
{
    public static IServiceCollection AddActs(this IServiceCollection services) => services
        .AddSingleton<ForecastRenewal>()
        .AddSingleton<EntryFiling>().AddSingleton<RoundFiling>()
        .AddSingleton<PutUpJars>().AddSingleton<CorrectJar>().AddSingleton<MeasurePh>().AddSingleton<TitrateBrine>()
        .AddSingleton<MoveJar>().AddSingleton<TakeBackMove>().AddSingleton<TakeBackEntry>()
        .AddSingleton<SayAllWell>().AddSingleton<ReportSeen>().AddSingleton<ReportTaste>().AddSingleton<SettleTrouble>()
        .AddSingleton<ChangeStage>().AddSingleton<PauseTasting>().AddSingleton<EnterWeekSheet>().AddSingleton<AnswerDesk>().AddSingleton<AwayDesk>()
        .AddSingleton<HomeDesk>().AddSingleton<DutyDesk>().AddSingleton<GuestDesk>().AddScoped<MemberDesk>()
        .AddSingleton<NoticeDesk>().AddSingleton<FeedDesk>().AddSingleton<PhoneDesk>()
        .AddSingleton<SensorDesk>().AddSingleton<RuleDesk>().AddSingleton<OfferDesk>().AddSingleton<CalibrationDesk>().AddSingleton<CredentialDesk>()
        .AddSingleton<ReadyPlaces>().AddSingleton<ReadyStarters>().AddSingleton<JarReader>().AddSingleton<SensorReader>().AddSingleton<RoundReader>();
}
