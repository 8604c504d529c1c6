using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace FermentWatch.TestKit;

/// <summary>A member of the household at the pages and the API of a host.</summary>
public sealed class KitchenClient : IDisposable
{
    // Cookies are carried by hand: a jar of cookies would judge their age by the machine's clock, and the host's is steered.
    private readonly HttpClient _http = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false });

    private readonly string _name;
    private readonly string _password;

    private KitchenClient(Uri web, string name, string password)
    {
        _http.BaseAddress = web;
        _http.DefaultRequestHeaders.Add("X-FermentWatch", "test");
        (_name, _password) = (name, password);
    }

    /// <summary>Adds a member by command line and signs in.</summary>
    public static async Task<KitchenClient> SignInAsync(TestHost host, string name)
    {
        (int exitCode, string output, string error) = await host.CommandAsync("member", "add", name);
        if (exitCode != 0)
            throw new InvalidOperationException(error);
        string password = output.Split('\n').First(line => line.StartsWith("password", StringComparison.Ordinal))["password".Length..].Trim();
        var client = new KitchenClient(host.Web, name, password);
        await client.SignInAgainAsync();
        return client;
    }

    /// <summary>Signs in once more: a sign-in holds for some weeks only.</summary>
    public async Task SignInAgainAsync()
    {
        using HttpResponseMessage answer = await _http.PostAsJsonAsync("/api/v1/sign-in", new { user = _name, password = _password });
        answer.EnsureSuccessStatusCode();
        string cookie = answer.Headers.GetValues("Set-Cookie").First(value => value.StartsWith("fermentwatch=", StringComparison.Ordinal));
        _http.DefaultRequestHeaders.Remove("Cookie");
        _http.DefaultRequestHeaders.Add("Cookie", cookie.Split(';')[0]);
    }

    public async Task<JsonElement> GetAsync(string path) => await _http.GetFromJsonAsync<JsonElement>(path);

    public async Task<string> PageAsync(string path) => await _http.GetStringAsync(path);

    /// <summary>Posts JSON and returns the answer's status and body.</summary>
    public async Task<(HttpStatusCode Status, string Body)> PostAsync(string path, object body)
    {
        using HttpResponseMessage answer = await _http.PostAsJsonAsync(path, body);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    /// <summary>Puts JSON.</summary>
    public async Task<(HttpStatusCode Status, string Body)> PutAsync(string path, object body)
    {
        using HttpResponseMessage answer = await _http.PutAsJsonAsync(path, body);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    public void Dispose() => _http.Dispose();
}
