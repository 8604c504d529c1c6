using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace FermentWatch.Notices.Tests.WebPush;

/// <summary>A push service on loopback that keeps what it gets and answers as it is told to.</summary>
internal sealed class PushService : IAsyncDisposable
{
    private readonly WebApplication _app;

    private PushService(WebApplication app) => _app = app;

    /// <summary>What it got, in order.</summary>
    public ConcurrentQueue<PushRequest> Got { get; } = [];

    /// <summary>How it answers: by default 201, as RFC 8030 has it.</summary>
    public Func<PushRequest, HttpContext, Task> Answer { get; set; } = (_, context) =>
    {
        context.Response.StatusCode = StatusCodes.Status201Created;
        return Task.CompletedTask;
    };

    public string Origin => _app.Urls.First();

    /// <summary>The endpoint it gave the one browser.</summary>
    public string Endpoint => Origin + "/p/JzLQ3raZJfFBR0aqvOMsLrt54w4rJUsV";

    public static async Task<PushService> StartAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var service = new PushService(builder.Build());
        service._app.Run(service.TakeAsync);
        await service._app.StartAsync();
        return service;
    }

    public async ValueTask DisposeAsync() => await _app.DisposeAsync();

    private async Task TakeAsync(HttpContext context)
    {
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body);
        var request = new PushRequest(
            context.Request.Method, context.Request.Path, context.Request.Headers.ToDictionary(header => header.Key, header =>
                header.Value.ToString(), StringComparer.OrdinalIgnoreCase), body.ToArray());
        Got.Enqueue(request);
        await Answer(request, context);
    }
}
