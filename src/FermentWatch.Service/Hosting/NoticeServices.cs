using FermentWatch.Kitchen.Calendar;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Notices.Feeds;
using FermentWatch.Notices.Mail;
using FermentWatch.Notices.Mqtt;
using FermentWatch.Notices.Outside;
using FermentWatch.Notices.Webhooks;
using FermentWatch.Notices.WebPush;
using FermentWatch.Web;
using FermentWatch.Web.Pages.Answers;
using NodaTime;

namespace FermentWatch.Service.Hosting;

/// <summary>The channels.</summary>
internal static class NoticeServices
{
    public static IServiceCollection AddNotices(this IServiceCollection services, MailOptions mail, WebOptions web) => services
        .AddSingleton(web)
        .AddSingleton<AnswerLinks>()
        .AddSingleton<INoticeLinks>(provider => provider.GetRequiredService<AnswerLinks>())
        .AddSingleton<INoticeChannel>(provider =>
            new MailChannel(mail, provider.GetRequiredService<INoticeLinks>(), provider.GetRequiredService<IClock>()))
        .AddSingleton<INoticeChannel>(provider => new WebhookChannel(
            new HttpClient(WayOut.Handler()), provider.GetRequiredService<INoticeLinks>(), provider.GetRequiredService<IClock>()))
        .AddSingleton<PushKeys>()
        .AddSingleton<IPushOffer>(provider => provider.GetRequiredService<PushKeys>())
        .AddSingleton<ICalendarFile, CalendarFile>().AddSingleton<IPlanFile, PlanFile>()
        .AddSingleton<INoticeChannel>(provider => new WebPushChannel(
            WayOut.Handler(), provider.GetRequiredService<PushKeys>(), provider.GetRequiredService<INoticeLinks>(), mail,
                provider.GetRequiredService<IClock>()))
        .AddSingleton<INoticeChannel>(provider => new MqttChannel(provider.GetRequiredService<IMessageOutlet>()));
}
