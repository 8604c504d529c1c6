using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace FermentWatch.TestKit;

/// <summary>Debian's influxdb (1.6) on a folder and ports of its own, with one database.</summary>
public sealed class InfluxDb : IAsyncDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly HttpClient _http;
    private Process? _process;

    public InfluxDb() => _http = new HttpClient { Timeout = TimeSpan.FromMinutes(1), BaseAddress = Address };

    /// <summary>Where it is once it is started.</summary>
    public Uri Address { get; } = new(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{ServiceProcess.FreePort()}"));

    /// <summary>Starts it, waits until it answers, and makes the database.</summary>
    public async Task StartAsync(string database)
    {
        string settings = Path.Combine(_folder.Path, "influxdb.conf");
        await File.WriteAllTextAsync(settings, string.Create(CultureInfo.InvariantCulture, $"""
            reporting-disabled = true
            bind-address = "127.0.0.1:{ServiceProcess.FreePort()}"
            [meta]
            dir = "{_folder.Path}/meta"
            [data]
            dir = "{_folder.Path}/data"
            wal-dir = "{_folder.Path}/wal"
            [monitor]
            store-enabled = false
            [http]
            bind-address = "{Address.Authority}"
            log-enabled = false
            """));
        _process = Process.Start(new ProcessStartInfo("influxd", ["run", "-config", settings])
        {
            RedirectStandardError = true, RedirectStandardOutput = true,
        })!;
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
        for (int turn = 0; turn < 1500 && !_process.HasExited; turn++)
        {
            if (await AnswersAsync())
            {
                await QueryAsync(null, $"CREATE DATABASE \"{database}\"");
                return;
            }
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
        }
        throw new InvalidOperationException("influxd did not start.");
    }

    /// <summary>Writes line protocol by its own call, that of version 1, with times in milliseconds. Returns the status it answered.</summary>
    public async Task<int> WriteAsync(string database, Stream lines)
    {
        using var content = new StreamContent(lines);
        using HttpResponseMessage answer = await _http.PostAsync(
            new Uri($"/write?db={Uri.EscapeDataString(database)}&precision=ms", UriKind.Relative), content);
        return (int)answer.StatusCode;
    }

    /// <summary>The series that a query in InfluxQL gives, with times in milliseconds of Unix.</summary>
    /// <exception cref="InvalidOperationException">It cannot be answered; the message is the database's.</exception>
    public async Task<IReadOnlyList<JsonElement>> QueryAsync(string? database, string query)
    {
        using var content = new FormUrlEncodedContent(new Dictionary<string, string> { ["db"] = database ?? "", ["epoch"] = "ms", ["q"] = query });
        using HttpResponseMessage answer = await _http.PostAsync(new Uri("/query", UriKind.Relative), content);
        JsonElement body = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        JsonElement result = body.TryGetProperty("results", out JsonElement results) ? results[0] : body;
        if (result.TryGetProperty("error", out JsonElement error))
            throw new InvalidOperationException($"{error.GetString()}: {query}");
        return result.TryGetProperty("series", out JsonElement series) ? [.. series.EnumerateArray()] : [];
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
        {
            _process.Kill();
            await _process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
            _process.Dispose();
            _process = null;
        }
        _http.Dispose();
        _folder.Dispose();
    }

    private async Task<bool> AnswersAsync()
    {
        try
        {
            using HttpResponseMessage answer = await _http.GetAsync(new Uri("/ping", UriKind.Relative));
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }
}
