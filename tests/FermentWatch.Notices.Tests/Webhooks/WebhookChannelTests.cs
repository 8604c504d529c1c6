using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Notices.Tests.Doubles;
using FermentWatch.Notices.Webhooks;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NodaTime.Testing;
using Channel = FermentWatch.Kitchen.Notices.Channel;

namespace FermentWatch.Notices.Tests.Webhooks;

/// <summary>Against a real HTTP receiver on loopback.</summary>
public sealed class WebhookChannelTests : IAsyncLifetime, IDisposable
{
    private readonly HttpClient _http = new();
    private WebApplication? _receiver;
    private HttpStatusCode _answer = HttpStatusCode.OK;
    private bool _hangs;
    private (Dictionary<string, string> Headers, byte[] Body)? _got;

    public async Task InitializeAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        _receiver = builder.Build();
        _receiver.Run(async context =>
        {
            using var body = new MemoryStream();
            await context.Request.Body.CopyToAsync(body);
            if (_hangs)
                await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, context.RequestAborted);
            _got = (context.Request.Headers.ToDictionary(header => header.Key, header => header.Value.ToString(), StringComparer.OrdinalIgnoreCase),
                body.ToArray());
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
        Assert.Equal(("round/2026-10-04/Mira", "Sun 4 Oct: 3 jars, one minute", "Under brine? Küche 1, 2; cellar 5\nOpen: 5"),
            (json.GetProperty("key").GetString(), json.GetProperty("title").GetString(), json.GetProperty("text").GetString()));
        Assert.Equal("round/2026-10-04/Mira", headers["webhook-id"]);
        byte[] signed = [.. Encoding.UTF8.GetBytes($"{headers["webhook-id"]}.{headers["webhook-timestamp"]}."), .. body];
        Assert.Equal("v1," + Convert.ToBase64String(HMACSHA256.HashData("kitchen key"u8, signed)), headers["webhook-signature"]);
    }

    [Fact]
    public async Task SendAsync_Late_SaysThatItIsLate()
    {
        await SendAsync("3 hours late");
        Assert.Equal("Sun 4 Oct: 3 jars, one minute (3 hours late)", JsonDocument.Parse(_got!.Value.Body).RootElement.GetProperty("title")
            .GetString());
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
        DeliveryOutcome outcome = await SendAsync(null, patience: TimeSpan.FromSeconds(0.2));
        Assert.Equal((DeliveryResult.TryAgain,
            $"{new Uri(_address!).GetComponents(UriComponents.SchemeAndServer, UriFormat.UriEscaped)} did not answer within 0.2 seconds."),
            (outcome.Result, outcome.Trouble));
    }

    [Fact]
    public async Task SendAsync_NobodyThere_IsTriedAgain()
    {
        await _receiver!.StopAsync();
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(null)).Result);
    }

    [Fact]
    public async Task SendAsync_Question_CarriesTheLinksThatAnswer()
    {
        await SendAsync(null, asks: true);
        JsonElement json = JsonDocument.Parse(_got!.Value.Body).RootElement;
        Assert.Equal("https://kitchen.example.org/", json.GetProperty("pageUrl").GetString());
        Assert.Equal(
            """[{"answer":"all well","shelf":null,"url":"https://kitchen.example.org/answer/whole"},"""
            + """{"answer":"all well","shelf":"K\u00FCche","url":"https://kitchen.example.org/answer/11111111111111111111111111111111"},"""
            + """{"answer":"all well","shelf":"cellar","url":"https://kitchen.example.org/answer/22222222222222222222222222222222"}]""",
            json.GetProperty("answers").GetRawText());
    }

    private Task<DeliveryOutcome> SendAsync(string? late, bool asks = false, TimeSpan? patience = null) =>
        new WebhookChannel(_http, new FixedLinks("https://kitchen.example.org"), new FakeClock(Make.Now)) { Patience = patience
            ?? TimeSpan.FromSeconds(10) }.SendAsync(Make.Notice(asks), Route(), late, CancellationToken.None);

    private NoticeRoute Route()
    {
        string address = _address ??= _receiver!.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        return Make.Route(Channel.Webhook, address, "kitchen key");
    }

    private string? _address;
}
