using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace FermentWatch.Scenario.Tests;

/// <summary>A real HTTP receiver of webhooks on loopback that keeps what it got.</summary>
internal sealed class Receiver : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly ConcurrentQueue<Posted> _got = new();

    private Receiver(WebApplication app) => _app = app;

    public string Address => _app.Urls.First() + "/kitchen";

    /// <param name="answer">Gives the status of the answer, when and as it likes; without it everything is taken (204).</param>
    public static async Task<Receiver> StartAsync(Func<Posted, Task<int>>? answer = null)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        var receiver = new Receiver(builder.Build());
        receiver._app.MapPost("/kitchen/{**rest}", async (HttpRequest request) =>
        {
            Posted posted = await ReadAsync(request);
            receiver._got.Enqueue(posted);
            return Results.StatusCode(answer is null ? StatusCodes.Status204NoContent : await answer(posted));
        });
        await receiver._app.StartAsync();
        return receiver;
    }

    /// <summary>Everything received so far, in order.</summary>
    public IReadOnlyList<Posted> Got => [.. _got];

    /// <summary>The one round received since it was asked last.</summary>
    public (string Title, string Text) TakeRound()
    {
        var rounds = new List<Posted>();
        while (_got.TryDequeue(out Posted? notice))
            if (notice.Id.StartsWith("round/", StringComparison.Ordinal))
                rounds.Add(notice);
        JsonElement round = Assert.Single(rounds).Body;
        return (round.GetProperty("title").GetString()!, round.GetProperty("text").GetString()!);
    }

    /// <summary>Everything received since it was asked last, in order.</summary>
    public IReadOnlyList<(string Id, string Title, string Text)> TakeAll()
    {
        var all = new List<(string, string, string)>();
        while (_got.TryDequeue(out Posted? notice))
            all.Add((notice.Id, notice.Body.GetProperty("title").GetString()!, notice.Body.GetProperty("text").GetString()!));
        return all;
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private static async Task<Posted> ReadAsync(HttpRequest request)
    {
        JsonElement body = (await JsonDocument.ParseAsync(request.Body)).RootElement.Clone();
        long seconds = long.Parse(request.Headers["webhook-timestamp"].Single()!, CultureInfo.InvariantCulture);
        return new Posted(request.Headers["webhook-id"].Single()!, Instant.FromUnixTimeSeconds(seconds), request.Path, body);
    }
}
