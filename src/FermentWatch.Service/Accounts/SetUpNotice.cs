using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace FermentWatch.Service.Accounts;

/// <summary>Says at start where the owner sets a password, as long as nobody has one.</summary>
internal sealed partial class SetUpNotice(SetUpToken token, Settings.WebOptions web, IServer server, IHostApplicationLifetime lifetime, ILogger<SetUpNotice> logger) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using var registration = lifetime.ApplicationStarted.Register(() => started.TrySetResult());
        await started.Task.WaitAsync(stoppingToken);
        if (await token.PathAsync(stoppingToken) is { } path)
            SayWhere(logger, Address() + web.SubPath + path);
    }

    private string Address() => server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() ?? "";

    [LoggerMessage(4001, LogLevel.Warning, "Nobody can sign in yet. The owner sets a password here, once: {Address}")]
    private static partial void SayWhere(ILogger logger, string address);
}
