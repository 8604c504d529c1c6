using System.Net;
using System.Net.Sockets;
using FermentWatch.Export.Receiving;
using InfluxDB.Client.Api.Domain;
using InfluxDB.Client.Writes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FermentWatch.Export.Tests.Receiving;

/// <summary>Against a real HTTP receiver on loopback.</summary>
public sealed class InfluxReceiverTests : IAsyncLifetime
{
    private static readonly PointData Point = PointData.Measurement("reading").Tag("site", "home").Field("value", 18.5)
        .Timestamp(1791115200000L, WritePrecision.Ms);

    private readonly TaskCompletionSource _hangUp = new();
    private WebApplication _receiver = null!;
    private RequestDelegate _answer = context => Status(context, 204);
    private (string Method, string Path, string Query, string Token, string Body) _got;

    public async Task InitializeAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        _receiver = builder.Build();
        _receiver.Run(async context =>
        {
            using var reader = new StreamReader(context.Request.Body);
            _got = (context.Request.Method, context.Request.Path, context.Request.QueryString.Value!,
                context.Request.Headers.Authorization.ToString(), await reader.ReadToEndAsync());
            await _answer(context);
        });
        await _receiver.StartAsync();
    }

    public async Task DisposeAsync()
    {
        _hangUp.TrySetResult();
        await _receiver.DisposeAsync();
    }

    [Fact]
    public async Task WriteAsync_TwoPoints_AreOneCallOfTheV2WriteApi()
    {
        using InfluxReceiver receiver = Receiver("/behind/a/proxy");
        WriteOutcome outcome = await receiver.WriteAsync([Point, Point.Timestamp(1791115200001L, WritePrecision.Ms)], default);
        Assert.Equal(WriteOutcome.Taken(1), outcome);
        Assert.Equal(
            ("POST", "/behind/a/proxy/api/v2/write", "?org=our%20home&bucket=kitchen&precision=ms", "Token s3cret",
                "reading,site=home value=18.5 1791115200000\nreading,site=home value=18.5 1791115200001"),
            (_got.Method, _got.Path, _got.Query, _got.Token, _got.Body));
    }

    [Fact]
    public async Task WriteAsync_AgainAndAgain_ComesByOneConnectionUntilThatIsClosed()
    {
        using InfluxReceiver receiver = Receiver();
        Assert.Equal(1, (await receiver.WriteAsync([Point], default)).Connection);
        Assert.Equal(1, (await receiver.WriteAsync([Point], default)).Connection);
        _answer = context =>
        {
            context.Response.Headers.Connection = "close";
            return Status(context, 204);
        };
        Assert.Equal(1, (await receiver.WriteAsync([Point], default)).Connection);
        _answer = context => Status(context, 204);
        Assert.Equal(2, (await receiver.WriteAsync([Point], default)).Connection);
        Assert.Equal(2, (await receiver.WriteAsync([Point], default)).Connection);
    }

    [Fact]
    public async Task WriteAsync_RefusedByName_DoesNotCostTheConnection()
    {
        using InfluxReceiver receiver = Receiver();
        Assert.Equal(1, (await receiver.WriteAsync([Point], default)).Connection);
        _answer = context => Status(context, 400);
        await receiver.WriteAsync([Point], default);
        _answer = context => Status(context, 204);
        Assert.Equal(1, (await receiver.WriteAsync([Point], default)).Connection);
    }

    [Theory]
    [InlineData(400, WriteResult.Refused)]
    [InlineData(413, WriteResult.Refused)]
    [InlineData(422, WriteResult.Refused)]
    [InlineData(301, WriteResult.TryAgain)]
    [InlineData(401, WriteResult.TryAgain)]
    [InlineData(403, WriteResult.TryAgain)]
    [InlineData(404, WriteResult.TryAgain)]
    [InlineData(408, WriteResult.TryAgain)]
    [InlineData(418, WriteResult.TryAgain)]
    [InlineData(429, WriteResult.TryAgain)]
    [InlineData(500, WriteResult.TryAgain)]
    [InlineData(503, WriteResult.TryAgain)]
    public async Task WriteAsync_OtherAnswers_ComeBackWithWhatWasSaid(int status, WriteResult result)
    {
        _answer = context => Status(context, status, """{"code":"invalid","message":"field type conflict\nin line 1"}""");
        using InfluxReceiver receiver = Receiver();
        WriteOutcome outcome = await receiver.WriteAsync([Point], default);
        Assert.Equal(result, outcome.Result);
        Assert.StartsWith($"{Address} answered {status}", outcome.Trouble!, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', outcome.Trouble!);
        Assert.DoesNotContain("s3cret", outcome.Trouble!, StringComparison.Ordinal);
        if (status != 301)
            Assert.Contains("field type conflict", outcome.Trouble!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(200)]
    [InlineData(202)]
    public async Task WriteAsync_SomethingThatServesPages_HasNotTakenAnything(int status)
    {
        _answer = context => Status(context, status, "<html>Welcome</html>");
        using InfluxReceiver receiver = Receiver();
        WriteOutcome outcome = await receiver.WriteAsync([Point], default);
        Assert.Equal(
            WriteOutcome.TryAgain($"{Address} answered {status}, where one that writes points answers 204"), outcome);
    }

    [Fact]
    public async Task WriteAsync_Busy_SaysHowLongToWait()
    {
        _answer = context =>
        {
            context.Response.Headers.RetryAfter = "120";
            return Status(context, 503);
        };
        using InfluxReceiver receiver = Receiver();
        Assert.Equal(TimeSpan.FromMinutes(2), (await receiver.WriteAsync([Point], default)).NotBefore);
    }

    [Fact]
    public async Task WriteAsync_ReceiverThatHangs_IsGivenUpInTime()
    {
        _answer = _ => _hangUp.Task;
        using InfluxReceiver receiver = Receiver(timeout: TimeSpan.FromSeconds(1));
        Assert.Equal(
            WriteOutcome.TryAgain($"{Address} could not be reached: no answer within 1 seconds"), await receiver.WriteAsync([Point], default));
    }

    [Fact]
    public async Task WriteAsync_NobodyThere_SaysSo()
    {
        int port = FreePort();
        using var receiver = new InfluxReceiver(Options($"http://127.0.0.1:{port}"));
        Assert.Equal(
            WriteOutcome.TryAgain($"http://127.0.0.1:{port} could not be reached: Connection refused (127.0.0.1:{port})"),
            await receiver.WriteAsync([Point], default));
    }

    [Fact]
    public async Task WriteAsync_Cancelled_Throws()
    {
        _answer = _ => _hangUp.Task;
        using InfluxReceiver receiver = Receiver();
        using var cancel = new CancellationTokenSource();
        Task<WriteOutcome> write = receiver.WriteAsync([Point], cancel.Token);
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => write);
    }

    private string Address => _receiver.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();

    private InfluxReceiver Receiver(string path = "", TimeSpan? timeout = null) => new(Options(Address + path, timeout));

    private static InfluxOptions Options(string address, TimeSpan? timeout = null) =>
        new() { Address = address, Token = "s3cret", Org = "our home", Bucket = "kitchen", Timeout = timeout ?? TimeSpan.FromSeconds(10) };

    private static Task Status(HttpContext context, int status, string? body = null)
    {
        context.Response.StatusCode = status;
        return body is null ? Task.CompletedTask : context.Response.WriteAsync(body);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
