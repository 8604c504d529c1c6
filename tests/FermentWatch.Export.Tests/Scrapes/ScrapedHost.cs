using System.Globalization;
using System.Net;
using System.Text.Json;
using FermentWatch.TestKit;
using NodaTime;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Export.Tests.Scrapes;

/// <summary>The product in a process of its own, that shows its figures.</summary>
internal sealed class ScrapedHost : IAsyncDisposable
{
    private readonly TemporaryFolder _folder;
    private readonly HttpClient _http = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false });

    private ScrapedHost(TemporaryFolder folder, Host host) => (_folder, Host) = (folder, host);

    public Host Host { get; }

    /// <param name="start">Where its clock stands.</param>
    /// <param name="settings">The settings, a section each.</param>
    public static async Task<ScrapedHost> StartAsync(Instant start, object settings)
    {
        var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "settings.json");
        await File.WriteAllTextAsync(file, JsonSerializer.Serialize(settings));
        return new ScrapedHost(folder, await Host.StartAsync(folder.Path, start, "--settings", file));
    }

    /// <summary>The page as a stranger gets it.</summary>
    /// <param name="path">The path.</param>
    /// <param name="headers">More headers.</param>
    public async Task<(HttpStatusCode Status, string Body)> GetAsync(string path, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(Host.Web, path));
        foreach ((string name, string value) in headers)
            request.Headers.Add(name, value);
        using HttpResponseMessage answer = await _http.SendAsync(request);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    public async Task<string> ScrapeAsync()
    {
        (HttpStatusCode status, string body) = await GetAsync("/metrics");
        return status == HttpStatusCode.OK ? body : throw new InvalidOperationException($"{status}: {body}");
    }

    /// <summary>What a database takes up, with what is written beside it.</summary>
    public long BytesOf(string database) => Directory.GetFiles(_folder.Path, database)
        .Concat(Directory.GetFiles(_folder.Path, $"{database}-wal")).Sum(file => new FileInfo(file).Length);

    /// <summary>Every sample by its name with the labels, such as <c>a_total{b="c"}</c>.</summary>
    public async Task<IReadOnlyDictionary<string, double>> FiguresAsync() => TextForm.Read(await ScrapeAsync())
        .SelectMany(family => family.Samples)
        .ToDictionary(sample => sample.Labels.Length == 0 ? sample.Name
            : string.Create(CultureInfo.InvariantCulture, $"{sample.Name}{{{sample.Labels}}}"), sample => sample.Value);

    public async ValueTask DisposeAsync()
    {
        _http.Dispose();
        await Host.DisposeAsync();
        _folder.Dispose();
    }
}
