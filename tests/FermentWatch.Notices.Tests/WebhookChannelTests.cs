using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Notices.Webhooks;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;
using Channel = FermentWatch.Kitchen.Notices.Channel;

namespace FermentWatch.Notices.Tests;

/// <summary>Against a real HTTP receiver on loopback.</summary>
public sealed class WebhookChannelTests : IAsyncLifetime, IDisposable
{
    private static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 5, 0);
    private readonly HttpClient _http = new();
    private WebApplication? _receiver;
    private HttpStatusCode _answer = HttpStatusCode.OK;
    private bool _hangs;
    private (Dictionary<string, string> Headers, byte[] Body)? _got;

    public async Task InitializeAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        _receiver = builder.Build();
        _receiver.Run(async context =>
        {
            using var body = new MemoryStream();
            await context.Request.Body.CopyToAsync(body);
            if (_hangs)
                await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, context.RequestAborted);
            _got = (context.Request.Headers.ToDictionary(header => header.Key, header => header.Value.ToString(), StringComparer.OrdinalIgnoreCase), body.ToArray());
            context.Response.StatusCode = (int)_answer;
        });
        await _receiver.StartAsync();
    }

    public async Task DisposeAsync() => await _receiver!.DisposeAsync();

    public void Dispose() => _http.Dispose();

    [Fact]
    public async Task SendAsync_Accepted_CarriesTextKeyAndAValidSignature()
    {
        Assert.Equal(DeliveryResult.Delivered, (await SendAsync(null)).Result);
        var (headers, body) = _got!.Value;
        JsonElement json = JsonDocument.Parse(body).RootElement;
        Assert.Equal(("round/2026-10-04/Mira", "Sun 4 Oct: 3 jars, one minute", "Counter 1 to 3: all under brine?"),
            (json.GetProperty("key").GetString(), json.GetProperty("title").GetString(), json.GetProperty("text").GetString()));
        Assert.Equal("round/2026-10-04/Mira", headers["webhook-id"]);
        byte[] signed = [.. Encoding.UTF8.GetBytes($"{headers["webhook-id"]}.{headers["webhook-timestamp"]}."), .. body];
        Assert.Equal("v1," + Convert.ToBase64String(HMACSHA256.HashData("kitchen key"u8, signed)), headers["webhook-signature"]);
    }

    [Fact]
    public async Task SendAsync_Late_SaysThatItIsLate()
    {
        await SendAsync("3 hours late");
        Assert.Equal("Sun 4 Oct: 3 jars, one minute (3 hours late)", JsonDocument.Parse(_got!.Value.Body).RootElement.GetProperty("title").GetString());
    }

    [Theory]
    [InlineData(HttpStatusCode.ServiceUnavailable, DeliveryResult.TryAgain, "The receiver answered 503.")]
    [InlineData(HttpStatusCode.NotFound, DeliveryResult.TryAgain, "The receiver answered 404.")]
    [InlineData(HttpStatusCode.Gone, DeliveryResult.Refused, "The receiver says that it is gone (410).")]
    public async Task SendAsync_Trouble_IsAnOutcomeWithAReason(HttpStatusCode answer, DeliveryResult result, string trouble)
    {
        _answer = answer;
        Assert.Equal(new DeliveryOutcome(result, trouble), await SendAsync(null));
    }

    [Fact]
    public async Task SendAsync_ReceiverHangs_IsGivenUpAndTriedAgain()
    {
        _hangs = true;
        DeliveryOutcome outcome = await SendAsync(null, TimeSpan.FromSeconds(0.2));
        Assert.Equal((DeliveryResult.TryAgain, $"{_address} did not answer within 0.2 seconds."), (outcome.Result, outcome.Trouble));
    }

    [Fact]
    public async Task SendAsync_NobodyThere_IsTriedAgain()
    {
        await _receiver!.StopAsync();
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(null)).Result);
    }

    private Task<DeliveryOutcome> SendAsync(string? late, TimeSpan? patience = null)
    {
        var notice = new Notice
        {
            Id = Guid.NewGuid(), Key = "round/2026-10-04/Mira", RouteId = Guid.NewGuid(), Person = "Mira", Title = "Sun 4 Oct: 3 jars, one minute",
            Body = "Counter 1 to 3: all under brine?", DueAt = Now, ExpiresAt = Now + Duration.FromHours(12), NextAttemptAt = Now,
        };
        return new WebhookChannel(_http, new FakeClock(Now)) { Patience = patience ?? TimeSpan.FromSeconds(10) }.SendAsync(notice, Route(), late, CancellationToken.None);
    }

    private NoticeRoute Route()
    {
        string address = _address ??= _receiver!.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        return new NoticeRoute { Id = Guid.NewGuid(), Person = "Mira", Channel = Channel.Webhook, Address = address, Secret = "kitchen key" };
    }

    private string? _address;
}
