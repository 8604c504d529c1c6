using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using FermentWatch.TestKit;

namespace FermentWatch.Benchmarks.Crowd;

/// <summary>People who open one page after the other, each over a connection that stays open, and come again when they are asked to.</summary>
internal sealed class Browsers : IDisposable
{
    private static readonly string[] Pages = ["/", "/jars", "/jars/1", "/jars/7", "/sensors", "/week-sheet", "/notices", "/household"];

    private readonly HttpClient[] _people;
    private int _askedToWait;
    private int _failed;

    private Browsers(HttpClient[] people) => _people = people;

    public ConcurrentBag<double> Milliseconds { get; } = [];

    public int AskedToWait => _askedToWait;

    public int Failed => _failed;

    /// <summary>Adds a person by command line and signs her in once; all browse as she.</summary>
    public static async Task<Browsers> SignInAsync(ServiceProcess service, string folder, int people)
    {
        string cookie = await CookieAsync(service, folder);
        return new Browsers([.. Enumerable.Range(0, people).Select(_ => Person(service, cookie))]);
    }

    /// <summary>One person added by command line and signed in, who may also write.</summary>
    public static async Task<HttpClient> PersonAsync(ServiceProcess service, string folder)
    {
        HttpClient person = Person(service, await CookieAsync(service, folder));
        person.DefaultRequestHeaders.Add("X-FermentWatch", "1");
        return person;
    }

    private static HttpClient Person(ServiceProcess service, string cookie)
    {
        var person = new HttpClient(new SocketsHttpHandler { UseCookies = false, MaxConnectionsPerServer = 1 }) { BaseAddress = service.Web };
        person.DefaultRequestHeaders.Add("Cookie", cookie);
        return person;
    }

    private static async Task<string> CookieAsync(ServiceProcess service, string folder)
    {
        var info = new ProcessStartInfo("dotnet",
            [Path.Combine(AppContext.BaseDirectory, "FermentWatch.Service.dll"), "member", "add", "Mira"]) { RedirectStandardOutput = true };
        info.Environment["FERMENTWATCH__STORAGE__FOLDER"] = folder;
        using Process adding = Process.Start(info)!;
        string said = await adding.StandardOutput.ReadToEndAsync();
        string password = said.Split('\n').First(line => line.StartsWith("password", StringComparison.Ordinal))["password".Length..].Trim();
        using var http = new HttpClient(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = service.Web };
        using HttpResponseMessage answer = await http.PostAsJsonAsync("/api/v1/sign-in", new { user = "Mira", password });
        answer.EnsureSuccessStatusCode();
        return answer.Headers.GetValues("Set-Cookie").First(value => value.StartsWith("fermentwatch=", StringComparison.Ordinal)).Split(';')[0];
    }

    public Task BrowseAsync(CancellationToken ends) => Task.WhenAll(_people.Select((person, index) => BrowseAsync(person, index, ends)));

    public void Dispose()
    {
        foreach (HttpClient person in _people)
            person.Dispose();
    }

    private async Task BrowseAsync(HttpClient person, int start, CancellationToken ends)
    {
        for (int page = start; !ends.IsCancellationRequested; page++)
        {
            long begun = TimeProvider.System.GetTimestamp();
            try
            {
                using HttpResponseMessage answer = await person.GetAsync(Pages[page % Pages.Length], ends);
                await answer.Content.ReadAsByteArrayAsync(ends);
                if (answer.StatusCode == HttpStatusCode.ServiceUnavailable)
                {
                    Interlocked.Increment(ref _askedToWait);
                    await Task.Delay(answer.Headers.RetryAfter?.Delta ?? TimeSpan.FromSeconds(1), TimeProvider.System, ends);
                }
                else if (answer.IsSuccessStatusCode)
                    Milliseconds.Add(TimeProvider.System.GetElapsedTime(begun).TotalMilliseconds);
                else
                    Interlocked.Increment(ref _failed);
            }
            catch (Exception) when (ends.IsCancellationRequested)
            {
                return;
            }
            catch (HttpRequestException)
            {
                Interlocked.Increment(ref _failed);
            }
        }
    }
}
