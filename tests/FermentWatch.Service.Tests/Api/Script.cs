using System.Net;
using System.Net.Http.Json;
using System.Security.Claims;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.Kitchen.Households;
using FermentWatch.RunningTests;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Service.Tests.Api;

/// <summary>A script that talks to the API of a running kitchen.</summary>
internal sealed class Script : IDisposable
{
    public const string User = "ada", Password = "four wet cabbages";

    private Script(RunningKitchen kitchen)
    {
        Http = new HttpClient(
            new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = new Uri(kitchen.Address) };
        Http.DefaultRequestHeaders.Add("X-FermentWatch", "test");
    }

    public HttpClient Http { get; }

    /// <summary>One that has not signed in.</summary>
    public static Script Stranger(RunningKitchen kitchen) => new(kitchen);

    /// <summary>One that has signed in, on an account made for it.</summary>
    public static Task<Script> SignedInAsync(RunningKitchen kitchen, string user = User, string displayName = "Ada") =>
        SignedInAsync(kitchen, user, displayName, MemberRole.Adult);

    /// <summary>One that has signed in as a child.</summary>
    public static Task<Script> ChildAsync(RunningKitchen kitchen) => SignedInAsync(kitchen, "lena", "Lena", MemberRole.Child);

    private static async Task<Script> SignedInAsync(RunningKitchen kitchen, string user, string displayName, MemberRole role)
    {
        await using AsyncServiceScope scope = kitchen.Services.CreateAsyncScope();
        var account = new Account { Id = Guid.CreateVersion7(), UserName = user, DisplayName = displayName };
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        Assert.True((await accounts.CreateAsync(account, Password)).Succeeded);
        await accounts.AddClaimAsync(account, new Claim(ClaimTypes.Role, role.ToString()));
        var script = new Script(kitchen);
        HttpResponseMessage answer = await script.PostAsync("/api/v1/sign-in", new { user, password = Password });
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
        return script;
    }

    public Task<HttpResponseMessage> PostAsync(string path, object body) => Http.PostAsJsonAsync(path, body);

    public Task<HttpResponseMessage> PutAsync(string path, object body) => Http.PutAsJsonAsync(path, body);

    public async Task<JsonElement> GetAsync(string path) => await Http.GetFromJsonAsync<JsonElement>(path);

    /// <summary>Puts up a jar that has nothing wrong, with some fields changed.</summary>
    public Task<HttpResponseMessage> PutUpAsync(params (string Field, string Value)[] changes)
    {
        var body = new Dictionary<string, string>
        {
            ["what"] = "cabbage", ["how_much"] = "900g", ["salt"] = "2.25%", ["vessel"] = "1l", ["place"] = "kitchen counter",
        };
        foreach ((string field, string value) in changes)
            body[field] = value;
        return PostAsync("/api/v1/jars", body);
    }

    /// <summary>Sends a form of a page, as a browser without script does.</summary>
    /// <param name="path">The page.</param>
    /// <param name="form">The form's name.</param>
    /// <param name="fields">What is filled in.</param>
    public async Task<HttpResponseMessage> SendFormAsync(string path, string form, params (string Name, string Value)[] fields)
    {
        string page = await Http.GetStringAsync(path);
        var sent = new Dictionary<string, string>
        {
            ["_handler"] = form,
            ["__RequestVerificationToken"] = Regex.Match(page, "__RequestVerificationToken\" value=\"([^\"]+)\"").Groups[1].Value,
        };
        foreach ((string name, string value) in fields)
            sent[name] = value;
        return await Http.PostAsync(path, new FormUrlEncodedContent(sent));
    }

    public void Dispose() => Http.Dispose();
}
