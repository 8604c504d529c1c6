using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.Acts.Members;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Service.Tests.Accounts;

/// <summary>Keys for scripts: each goes as far as it says, in its maker's name, until it is withdrawn (RFC 6750).</summary>
public sealed partial class ScriptKeyTests : IAsyncLifetime
{
    private static readonly string[] RecordedDoors =
    [
        "DELETE /api/v1/recipes/{id}", "DELETE /api/v1/sensors/{slug}/calibrations/{id}", "POST /api/v1/jars",
        "POST /api/v1/jars/{number}/observations/{id}/take-back", "POST /api/v1/jars/{number}/opened", "POST /api/v1/jars/{number}/ph",
        "POST /api/v1/jars/{number}/place", "POST /api/v1/jars/{number}/portions", "POST /api/v1/jars/{number}/titration",
        "POST /api/v1/round/not-tasting", "POST /api/v1/round/today/all-well", "POST /api/v1/round/today/handled",
        "POST /api/v1/round/today/seen", "POST /api/v1/round/today/stage", "POST /api/v1/round/today/taste",
        "POST /api/v1/sensors/{slug}/calibrations", "PUT /api/v1/jars/{number}", "PUT /api/v1/recipes/{id}",
    ];

    private RunningKitchen _kitchen = null!;
    private Script _ada = null!;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _ada = await Script.SignedInAsync(_kitchen);
        Assert.Equal(HttpStatusCode.Created, (await _ada.PutUpAsync()).StatusCode);
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task Make_OnThePage_ShowsTheKeyOnceAndKeepsItsHashOnly()
    {
        HttpResponseMessage made = await _ada.SendFormAsync("/household", "script-new", ("Script.Name", "garden display"), ("Script.Scope", "Read"));
        string key = ShownKey().Match(await made.Content.ReadAsStringAsync()).Value;
        Assert.Matches("^fwkey_[A-Za-z0-9_-]{24}$", key);
        string later = await _ada.Http.GetStringAsync("/household");
        Assert.Contains("garden display", later, StringComparison.Ordinal);
        Assert.Contains("may read, in the name of Ada, not used yet", later, StringComparison.Ordinal);
        Assert.DoesNotContain(key, later, StringComparison.Ordinal);
        Assert.DoesNotContain(key, await RecordsAsync(), StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.OK, (await CallAsync(key, HttpMethod.Get, "/api/v1/jars")).StatusCode);
        Assert.Contains("may read, in the name of Ada, used today 10:00", await _ada.Http.GetStringAsync("/household"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Make_WithoutANameOrOfNoSuchKind_SaysWhatIsMissingAndMakesNone()
    {
        HttpResponseMessage answer = await _ada.SendFormAsync("/household", "script-new", ("Script.Name", " "), ("Script.Scope", "Everything"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Empty(await KeysAsync(keys => keys.AllAsync(default)));
    }

    [Fact]
    public async Task Read_Key_AsksEverythingAndChangesNothing()
    {
        string key = await KeyAsync(ScriptScope.Read);
        Assert.Equal(1, (await JsonAsync(await CallAsync(key, HttpMethod.Get, "/api/v1/jars"))).GetArrayLength());
        Assert.Equal(HttpStatusCode.OK, (await CallAsync(key, HttpMethod.Get, "/openapi/v1.json")).StatusCode);
        HttpResponseMessage refused = await CallAsync(key, HttpMethod.Post, "/api/v1/round/today/seen", new { jar = 1, what = "Film" });
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        Assert.Equal("Bearer error=\"insufficient_scope\", scope=\"record\"", refused.Headers.WwwAuthenticate.ToString());
        Assert.Equal("This key may not do that: one that may record would be right. Nothing was changed.",
            (await JsonAsync(refused)).GetProperty("title").GetString());
    }

    /// <summary>Every door of the API that changes something, by the keys that open it: what a door answers beyond that is its own.</summary>
    [Fact]
    public async Task EveryDoorThatChanges_IsOpenToKeysThatGoFarEnoughAndToNoOther()
    {
        string read = await KeyAsync(ScriptScope.Read), record = await KeyAsync(ScriptScope.Record), manage = await KeyAsync(ScriptScope.Manage);
        var recorded = new List<string>();
        foreach ((HttpMethod method, string door) in await ChangingDoorsAsync())
        {
            string path = Blank().Replace(door, blank => blank.Value == "{id}" ? "01920000-0000-7000-8000-000000000077" : "77");
            Assert.Equal(HttpStatusCode.Forbidden, (await CallAsync(read, method, path)).StatusCode);
            if ((await CallAsync(record, method, path)).StatusCode != HttpStatusCode.Forbidden)
                recorded.Add($"{method} {door}");
            Assert.NotEqual(HttpStatusCode.Forbidden, (await CallAsync(manage, method, path)).StatusCode);
        }
        Assert.Equal(RecordedDoors, recorded.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Record_Key_WritesInItsMakersNameWithoutCookieOrHeader()
    {
        string key = await KeyAsync(ScriptScope.Record);
        HttpResponseMessage entered = await CallAsync(key, HttpMethod.Post, "/api/v1/round/today/seen", new { jar = 1, what = "Film" });
        Assert.True(entered.IsSuccessStatusCode, await entered.Content.ReadAsStringAsync());
        JsonElement jar = await _ada.GetAsync("/api/v1/jars/1");
        Assert.Contains("\"by\":\"Ada\"", jar.GetRawText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("password")]
    [InlineData("role")]
    [InlineData("removed")]
    [InlineData("withdrawn")]
    public async Task Key_WhoseMakerOrSelfIsGone_OpensNothingFromTheNextCallOn(string how)
    {
        using Script kim = await Script.SignedInAsync(_kitchen, "Kim", "Kim");
        string key = await KeyAsync(ScriptScope.Manage, "Kim");
        Assert.Equal(HttpStatusCode.OK, (await CallAsync(key, HttpMethod.Get, "/api/v1/jars")).StatusCode);
        await using (AsyncServiceScope scope = _kitchen.Services.CreateAsyncScope())
        {
            var members = scope.ServiceProvider.GetRequiredService<ManageMembers>();
            await (how switch
            {
                "password" => members.SetPasswordAsync("Kim", "five dry cabbages", default),
                "role" => members.SetRoleAsync("Kim", MemberRole.Child, default),
                "removed" => members.RemoveAsync("Kim", default),
                _ => WithdrawOnThePageAsync(),
            });
        }
        HttpResponseMessage refused = await CallAsync(key, HttpMethod.Get, "/api/v1/jars");
        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
        Assert.Equal("Bearer error=\"invalid_token\"", refused.Headers.WwwAuthenticate.ToString());
        Assert.Empty(await KeysAsync(keys => keys.AllAsync(default)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("fwkey_")]
    [InlineData("fwkey_AAAAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("four wet cabbages")]
    public async Task WrongKey_AlsoBesideAGoodCookie_IsRefused(string key)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/v1/jars");
        request.Headers.TryAddWithoutValidation("Authorization", $"Bearer {key}");
        Assert.Equal(HttpStatusCode.Unauthorized, (await _ada.Http.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task Key_AtAPage_OpensNone()
    {
        HttpResponseMessage answer = await CallAsync(await KeyAsync(ScriptScope.Manage), HttpMethod.Get, "/household");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("/sign-in", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Use_OfEachMinute_IsNotedOnceADay()
    {
        string key = await KeyAsync(ScriptScope.Read);
        Instant first = _kitchen.Now;
        foreach (double hours in new[] { 0, 1, 23.9 - 1 })
        {
            _kitchen.Clock.Advance(TimeSpan.FromHours(hours));
            await CallAsync(key, HttpMethod.Get, "/api/v1/places");
            Assert.Equal(first, Assert.Single(await KeysAsync(keys => keys.AllAsync(default))).Key.UsedAt);
        }
        _kitchen.Clock.Advance(TimeSpan.FromHours(0.1));
        await CallAsync(key, HttpMethod.Get, "/api/v1/places");
        Assert.Equal(first + Duration.FromHours(24), Assert.Single(await KeysAsync(keys => keys.AllAsync(default))).Key.UsedAt);
    }

    private async Task<IReadOnlyList<Kinetics.Refusal>> WithdrawOnThePageAsync()
    {
        Guid id = Assert.Single(await KeysAsync(keys => keys.AllAsync(default))).Key.Id;
        await _ada.SendFormAsync("/household", $"script-{id}", ("Script.Withdrawn", $"{id}"));
        return [];
    }

    private async Task<IEnumerable<(HttpMethod, string)>> ChangingDoorsAsync()
    {
        JsonElement paths = (await _ada.GetAsync("/openapi/v1.json")).GetProperty("paths");
        string[] open = ["/api/v1/sign-in", "/api/v1/answers/{token}"];
        return
        [
            .. from path in paths.EnumerateObject()
               where !open.Contains(path.Name)
               from operation in path.Value.EnumerateObject()
               where operation.Name is "post" or "put" or "delete" or "patch"
               select (HttpMethod.Parse(operation.Name), path.Name)
        ];
    }

    private async Task<string> KeyAsync(ScriptScope scope, string of = "Ada")
    {
        await using AsyncServiceScope services = _kitchen.Services.CreateAsyncScope();
        Guid account = (await services.ServiceProvider.GetRequiredService<ManageMembers>().AllAsync(default)).Single(each =>
            each.Name.Equals(of, StringComparison.OrdinalIgnoreCase)).Id;
        (string? key, _) = await KeysAsync(keys => keys.MakeAsync(new ScriptKeyInput { Name = $"{scope}", Scope = $"{scope}" }, account, default));
        return key!;
    }

    private Task<T> KeysAsync<T>(Func<IssueScriptKey, Task<T>> what) => what(_kitchen.Services.GetRequiredService<IssueScriptKey>());

    private async Task<HttpResponseMessage> CallAsync(string key, HttpMethod method, string path, object? body = null)
    {
        using var http = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(_kitchen.Address) };
        using var request = new HttpRequestMessage(method, path);
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", key);
        if (method != HttpMethod.Get)
            request.Content = JsonContent.Create(body ?? new { });
        return await http.SendAsync(request);
    }

    private static async Task<JsonElement> JsonAsync(HttpResponseMessage answer) =>
        JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;

    private async Task<string> RecordsAsync()
    {
        var all = new StringBuilder();
        foreach (string file in Directory.GetFiles(_kitchen.Folder, "records.db*"))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var reader = new StreamReader(stream, Encoding.Latin1);
            all.Append(await reader.ReadToEndAsync());
        }
        return all.ToString();
    }

    [GeneratedRegex("fwkey_[A-Za-z0-9_-]+")]
    private static partial Regex ShownKey();

    [GeneratedRegex(@"\{[^}]+\}")]
    private static partial Regex Blank();
}
