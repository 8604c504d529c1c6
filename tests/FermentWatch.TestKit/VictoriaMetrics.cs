using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using NodaTime;

namespace FermentWatch.TestKit;

/// <summary>Debian's victoria-metrics on a folder and port of its own, to be killed and started again.</summary>
public sealed class VictoriaMetrics : IAsyncDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly HttpClient _http = new() { Timeout = TimeSpan.FromSeconds(5) };
    private readonly int _port = FreePort();
    private Process? _process;

    /// <summary>Where it is, or will be once it is started.</summary>
    public Uri Address => new($"http://127.0.0.1:{_port.ToString(CultureInfo.InvariantCulture)}");

    /// <summary>Starts it on what an earlier one left, and waits until it answers.</summary>
    public async Task StartAsync()
    {
        var info = new ProcessStartInfo("victoria-metrics") { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (string argument in (string[])["-dedup.minScrapeInterval=1ms", $"-httpListenAddr={Address.Authority}",
            $"-storageDataPath={_folder.Path}", "-retentionPeriod=10y", "-loggerLevel=ERROR"])
            info.ArgumentList.Add(argument);
        _process = Process.Start(info)!;
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
        for (int turn = 0; turn < 500 && !_process.HasExited; turn++)
        {
            if (await AnswersAsync())
                return;
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
        }
        throw new InvalidOperationException("victoria-metrics did not start.");
    }

    /// <summary>Ends it as SIGKILL does.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        _process.Dispose();
        _process = null;
    }

    /// <summary>Every sample there is: its metric with the labels by name, its time and its value, in no order.</summary>
    public async Task<List<(string Series, long UnixMilliseconds, double Value)>> ExportAsync()
    {
        await _http.GetStringAsync(new Uri(Address, "/internal/force_flush"));
        string lines = await _http.GetStringAsync(
            new Uri(Address, "/api/v1/export?match[]=" + Uri.EscapeDataString("{__name__=~\".+\"}") + "&start=0"));
        var samples = new List<(string, long, double)>();
        foreach (string line in lines.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            using JsonDocument entry = JsonDocument.Parse(line);
            var labels = entry.RootElement.GetProperty("metric").EnumerateObject()
                .ToDictionary(label => label.Name, label => label.Value.GetString()!);
            IEnumerable<string> tags = labels.Where(label => label.Key != "__name__").OrderBy(label => label.Key, StringComparer.Ordinal)
                .Select(label => $"{label.Key}={label.Value}");
            string series = $"{labels["__name__"]}{{{string.Join(',', tags)}}}";
            foreach ((JsonElement value, JsonElement at) in entry.RootElement.GetProperty("values").EnumerateArray()
                .Zip(entry.RootElement.GetProperty("timestamps").EnumerateArray()))
                samples.Add((series, at.GetInt64(), value.GetDouble()));
        }
        return samples;
    }

    /// <summary>Takes in a scrape in the text form of Prometheus as if it had been made at an instant.</summary>
    public async Task ImportTextAsync(string scrape, Instant at)
    {
        using var content = new StringContent(scrape);
        string path = string.Create(CultureInfo.InvariantCulture, $"/api/v1/import/prometheus?timestamp={at.ToUnixTimeMilliseconds()}");
        using HttpResponseMessage answer = await _http.PostAsync(new Uri(Address, path), content);
        answer.EnsureSuccessStatusCode();
    }

    /// <summary>What a query in PromQL gives at an instant: by the values of its labels, its name left out, parted by commas.</summary>
    public async Task<Dictionary<string, double>> AskAsync(string query, Instant at)
    {
        await _http.GetStringAsync(new Uri(Address, "/internal/force_flush"));
        using HttpResponseMessage answer = await _http.GetAsync(new Uri(Address,
            string.Create(CultureInfo.InvariantCulture, $"/api/v1/query?time={at.ToUnixTimeSeconds()}&query={Uri.EscapeDataString(query)}")));
        string body = await answer.Content.ReadAsStringAsync();
        if (!answer.IsSuccessStatusCode)
            throw new InvalidOperationException(body);
        using JsonDocument json = JsonDocument.Parse(body);
        return json.RootElement.GetProperty("data").GetProperty("result").EnumerateArray().ToDictionary(
            row => string.Join(',', row.GetProperty("metric").EnumerateObject().Where(label => label.Name != "__name__")
                .Select(label => label.Value.GetString())),
            row => double.Parse(row.GetProperty("value")[1].GetString()!, CultureInfo.InvariantCulture));
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
            await KillAsync();
        _http.Dispose();
        _folder.Dispose();
    }

    private async Task<bool> AnswersAsync()
    {
        try
        {
            using HttpResponseMessage answer = await _http.GetAsync(new Uri(Address, "/health"));
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
