using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using FermentWatch.Service.CommandLine;

namespace FermentWatch.Scenario.Tests;

/// <summary>The demo in a process of its own, known only by what it prints.</summary>
internal sealed partial class RunningDemo : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly Process _process;
    private readonly HttpClient _http = new(new SocketsHttpHandler { AllowAutoRedirect = false });

    private RunningDemo(Process process, Dictionary<string, string> said)
    {
        _process = process;
        Said = said;
        _http.BaseAddress = new Uri(said["open"]);
    }

    /// <summary>What it printed, by the word before it.</summary>
    public IReadOnlyDictionary<string, string> Said { get; }

    /// <summary>Starts it, waits until its history has come in, and signs in as it says.</summary>
    public static async Task<RunningDemo> StartAsync()
    {
        var info = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        info.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "FermentWatch.Service.dll"));
        info.ArgumentList.Add("demo");
        Process process = Process.Start(info)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        var said = new Dictionary<string, string>();
        while (!said.ContainsKey("history") && await process.StandardOutput.ReadLineAsync().WaitAsync(Patience) is { } line)
            if (Saying().Match(line) is { Success: true } match)
                said[match.Groups["word"].Value] = match.Groups["what"].Value;
        _ = process.StandardOutput.ReadToEndAsync();
        var demo = new RunningDemo(process, said);
        Match person = Person().Match(said["sign in"]);
        using HttpResponseMessage answer = await demo._http.PostAsJsonAsync(
            "/api/v1/sign-in", new { user = person.Groups["name"].Value, password = person.Groups["password"].Value });
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
        return demo;
    }

    /// <summary>A page as it is read.</summary>
    public async Task<string> PageAsync(string path) => WebUtility.HtmlDecode(await _http.GetStringAsync(path));

    /// <summary>What stands at an address, or null where nothing does.</summary>
    public async Task<string?> FindAsync(string path)
    {
        using HttpResponseMessage answer = await _http.GetAsync(path);
        return answer.StatusCode == HttpStatusCode.NotFound ? null : await answer.EnsureSuccessStatusCode().Content.ReadAsStringAsync();
    }

    /// <summary>Carries out the line that the demo offers for trying, with another temperature in it.</summary>
    public async Task<int> SendAsync(double celsius)
    {
        string[] words = Said["send"].Split(' ');
        words[^1] = celsius.ToString("0.00", CultureInfo.InvariantCulture);
        using Process pub = Process.Start(words[0], words[1..]);
        await pub.WaitForExitAsync().WaitAsync(Patience);
        return pub.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        // Not by SIGINT: a shell that starts the tests in the background has that one ignored.
        using (Process end = Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]))
            await end.WaitForExitAsync().WaitAsync(Patience);
        await _process.WaitForExitAsync().WaitAsync(Patience);
        _process.Dispose();
        _http.Dispose();
    }

    [GeneratedRegex("^(?<word>open|sign in|send|history) +(?<what>.+)$")]
    private static partial Regex Saying();

    [GeneratedRegex("name (?<name>\\S+), password (?<password>\\S+)")]
    private static partial Regex Person();
}
