using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.States;
using FermentWatch.Notices.Mqtt;
using FermentWatch.Notices.Webhooks;
using NodaTime;

namespace FermentWatch.Service.Hosting;

/// <summary>The channels.</summary>
internal static class NoticeServices
{
    private static readonly TimeSpan NameServersAreAskedAgainAfter = TimeSpan.FromMinutes(5);

    public static IServiceCollection AddNotices(this IServiceCollection services) => services
        .AddSingleton<INoticeChannel>(provider => new WebhookChannel(
            new HttpClient(new SocketsHttpHandler { PooledConnectionLifetime = NameServersAreAskedAgainAfter, AllowAutoRedirect = false }),
            provider.GetRequiredService<IClock>()))
        .AddSingleton<INoticeChannel>(provider => new MqttChannel(provider.GetRequiredService<IMessageOutlet>()));
}
