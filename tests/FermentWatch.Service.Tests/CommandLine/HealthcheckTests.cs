using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;

namespace FermentWatch.Service.Tests.CommandLine;

public class HealthcheckTests
{
    [Theory]
    [InlineData(200, 0)]
    [InlineData(503, 1)]
    public async Task Healthcheck_RunningService_FollowsItsAnswer(int answer, int exitCode)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseKestrelCore().UseUrls("http://127.0.0.1:0");
        await using WebApplication app = builder.Build();
        app.MapGet("/healthz/ready", () => Results.StatusCode(answer));
        await app.StartAsync();
        Call call = await At(new Uri(app.Urls.Single()).Port);
        Assert.Equal(exitCode, call.ExitCode);
    }

    [Fact]
    public async Task Healthcheck_NobodyThere_ExitsOneAndSaysWhereItAsked()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        int port = ((IPEndPoint)taken.LocalEndpoint).Port;
        taken.Stop();
        Call call = await At(port);
        Assert.Equal(1, call.ExitCode);
        Assert.StartsWith($"http://127.0.0.1:{port}/healthz/ready did not answer: ", Assert.Single(call.ErrorLines), StringComparison.Ordinal);
    }

    private static Task<Call> At(int port) => Call.WithEnvironment(
        new Dictionary<string, string> { ["FERMENTWATCH__WEB__PORT"] = port.ToString(CultureInfo.InvariantCulture) }, "healthcheck");
}
