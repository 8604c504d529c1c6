using FermentWatch.TestKit;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace FermentWatch.Export.Tests.Dashboards;

/// <summary>
/// Debian's influxdb is older than the write call that we use, which came with 1.8. This takes it and hands the lines on, untouched, by the call
/// of version 1: the bucket is the database there.
/// </summary>
internal sealed class WriteCallOfVersion2 : IAsyncDisposable
{
    private readonly WebApplication _app;

    private WriteCallOfVersion2(WebApplication app) => _app = app;

    public string Address => _app.Urls.First();

    public static async Task<WriteCallOfVersion2> BeforeAsync(InfluxDb database)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        WebApplication app = builder.Build();
        app.Urls.Add("http://127.0.0.1:0");
        app.MapPost("/api/v2/write", async (string bucket, string precision, HttpRequest request) =>
            precision == "ms" ? Results.StatusCode(await database.WriteAsync(bucket, request.Body)) : Results.BadRequest());
        await app.StartAsync();
        return new WriteCallOfVersion2(app);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();
}
