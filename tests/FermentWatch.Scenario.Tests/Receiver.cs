using System.Collections.Concurrent;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;

namespace FermentWatch.Scenario.Tests;

/// <summary>A real HTTP receiver of webhooks on loopback that keeps what it got.</summary>
internal sealed class Receiver : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly ConcurrentQueue<JsonElement> _got = new();

    private Receiver(WebApplication app) => _app = app;

    public string Address => _app.Urls.First() + "/kitchen";

    public static async Task<Receiver> StartAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var receiver = new Receiver(builder.Build());
        receiver._app.MapPost("/kitchen", async (HttpRequest request) =>
        {
            receiver._got.Enqueue((await JsonDocument.ParseAsync(request.Body)).RootElement.Clone());
            return Results.NoContent();
        });
        await receiver._app.StartAsync();
        return receiver;
    }

    /// <summary>Everything received so far, in order.</summary>
    public IReadOnlyList<JsonElement> Got => [.. _got];

    /// <summary>The one round received since it was asked last.</summary>
    public (string Title, string Text) TakeRound()
    {
        var rounds = new List<JsonElement>();
        while (_got.TryDequeue(out JsonElement notice))
            if (notice.GetProperty("key").GetString()!.StartsWith("round/", StringComparison.Ordinal))
                rounds.Add(notice);
        JsonElement round = Assert.Single(rounds);
        return (round.GetProperty("title").GetString()!, round.GetProperty("text").GetString()!);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();
}
