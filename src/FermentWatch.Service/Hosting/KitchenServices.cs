using FermentWatch.Kitchen.Calendar;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Rounds;

namespace FermentWatch.Service.Hosting;

/// <summary>The kitchen's rules, as the loops and pages ask for them.</summary>
internal static class KitchenServices
{
    public static IServiceCollection AddKitchen(this IServiceCollection services) => services
        .AddSingleton<SetAside>()
        .AddSingleton<WrittenDown>()
        .AddSingleton<ClockWatch>()
        .AddSingleton<JudgingBooks>()
        .AddSingleton<JudgingPass>()
        .AddSingleton<ForecastPass>()
        .AddSingleton<DryPlaces>()
        .AddSingleton<RoundPass>()
        .AddSingleton<ConcernReader>()
        .AddSingleton<OccasionFactsReader>()
        .AddSingleton<OccasionPass>()
        .AddSingleton<DeliveryPass>()
        .AddSingleton<ComingDaysReader>()
        .AddSingleton<StatePass>()
        .AddSingleton<AnnouncementPass>();
}
