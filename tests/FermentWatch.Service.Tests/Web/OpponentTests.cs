using System.Net;
using System.Net.Http.Headers;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Service.Tests.Web;

/// <summary>Every write there is, by an opponent who has signed in as an adult: whatever is sent, the answer is not that the service
/// failed.</summary>
public sealed partial class OpponentTests : IAsyncLifetime
{
    private static readonly string Huge = new('x', 4 << 20);
    private static readonly string[] OddTexts =
        ["", " ", "\0", "-1", "1e999", "NaN", "99999999999999999999", "9999-12-31T23:59", "0001-01-01", "\u202Eevil\r\nline", "\uD800", "😀",
        "' OR 1=1 --", "<script>", "../../etc", new('9', 5000)];
    private static readonly string[] OddBodies =
    [
        "", "null", "[]", "{}", "\"text\"", "{\"unknown_field\":1}", "{\"jar\":1,\"jar\":2}", "{", "{\"jar\":1e400}", "{\"jar\":\"\\ud800\"}", "\0",
        new string('[', 5000), "{\"note\":\"" + Huge + "\"}",
    ];
    private static readonly bool Long = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1";
    private string _guest = "";
    private int _turn;
    private RunningKitchen _kitchen = null!;
    private Script _ada = null!;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _ada = await Script.SignedInAsync(_kitchen);
        await _ada.PutUpAsync();
        await _ada.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "Film" });
        await _ada.PostAsync("/api/v1/notice-routes", new { person = "Ada", channel = "Mqtt", address = "kitchen/ada" });
        await _ada.PostAsync("/api/v1/gateways", new { name = "attic", filter = "zigbee/#" });
        HttpResponseMessage guest = await _ada.SendFormAsync("/household", "guest-new", ("Guest.Name", "Ben"), ("Guest.Days", "7"));
        _guest = Regex.Match(await guest.Content.ReadAsStringAsync(), "/guest/[A-Za-z0-9_-]+").Value;
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task Api_EveryWriteWithEveryOddBody_IsNeverTheServicesFault()
    {
        var failed = new List<string>();
        int sent = 0;
        foreach ((string method, string path) in Writes().Where(write => write.Path.StartsWith("/api/", StringComparison.Ordinal))
            .SelectMany(OfEveryKind))
            foreach (string body in OddBodies)
            {
                using var request = new HttpRequestMessage(new HttpMethod(method),
                    path) { Content = new StringContent(body, Encoding.UTF8, "application/json") };
                await TryAsync(request, $"{body[..Math.Min(30, body.Length)]}", failed);
                sent++;
            }
        Assert.True(sent > 300, $"{sent} requests");
        Assert.Empty(failed);
    }

    [Fact]
    public async Task Api_EveryFieldOfEveryWriteWithEveryOddText_IsNeverTheServicesFault()
    {
        var failed = new List<string>();
        System.Text.Json.JsonElement description = await _ada.GetAsync("/openapi/v1.json");
        System.Text.Json.JsonElement schemas = description.GetProperty("components").GetProperty("schemas");
        int sent = 0;
        foreach (System.Text.Json.JsonProperty path in description.GetProperty("paths").EnumerateObject())
            foreach (System.Text.Json.JsonProperty method in path.Value.EnumerateObject()
                .Where(each => each.Value.TryGetProperty("requestBody", out _)))
            {
                string[] fields = FieldsOf(method.Value.GetProperty("requestBody"), schemas);
                foreach (string field in fields)
                    foreach (string odd in Odd())
                    {
                        string rest = string.Join(',', fields.Where(each => each != field).Select(each => $"\"{each}\":\"1\""));
                        string value = System.Text.Json.JsonSerializer.Serialize(odd.Replace("\uD800", "", StringComparison.Ordinal));
                        using var request = new HttpRequestMessage(new HttpMethod(method.Name.ToUpperInvariant()), Filled(path.Name))
                        {
                            Content = new StringContent($"{{\"{field}\":{value}{(rest.Length > 0 ? "," : "")}{rest}}}", Encoding.UTF8,
                                "application/json"),
                        };
                        await TryAsync(request, $"{field}={odd[..Math.Min(20, odd.Length)]}", failed);
                        sent++;
                    }
            }
        Assert.True(sent > 300, $"{sent} requests");
        Assert.Empty(failed);
    }

    [Fact]
    public async Task Pages_EveryFormWithMissingDoubledHugeAndOddFields_IsNeverTheServicesFault()
    {
        var failed = new List<string>();
        int sent = 0;
        foreach (string page in Pages())
        {
            HttpResponseMessage shown = await _ada.Http.GetAsync(page);
            if (!shown.IsSuccessStatusCode)
                continue;
            string html = await shown.Content.ReadAsStringAsync();
            foreach (Match form in Forms().Matches(html).Where(form => form.Value.Contains("method=\"post\"", StringComparison.Ordinal)
                && !form.Value.Contains("sign-out", StringComparison.Ordinal)))
            {
                string to = Action().Match(form.Value) is { Success: true } action
                    ? new Uri(new Uri(_kitchen.Address), WebUtility.HtmlDecode(action.Groups[1].Value)).PathAndQuery : page;
                (string Name, string Value)[] fields = [.. Inputs().Matches(form.Value)
                    .Select(each => (each.Groups[1].Value, WebUtility.HtmlDecode(ValueOf().Match(each.Value).Groups[1].Value)))];
                foreach ((string what, IEnumerable<(string, string)> changed) in Changes(fields))
                {
                    using var request = new HttpRequestMessage(HttpMethod.Post, to) { Content = Encoded(changed) };
                    await TryAsync(request, what, failed);
                    sent++;
                }
            }
        }
        Assert.True(sent > 500, $"{sent} requests");
        Assert.Empty(failed);
    }

    [Fact]
    public async Task Pages_EveryAddressWithOddWordsBehindIt_IsNeverTheServicesFault()
    {
        var failed = new List<string>();
        string[] names = [.. typeof(FermentWatch.Web.WebOptions).Assembly.GetTypes()
            .SelectMany(type => type.GetProperties(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public))
            .Select(property => (property.Name, Query: property.GetCustomAttribute<SupplyParameterFromQueryAttribute>()))
                .Where(each => each.Query is not null)
            .Select(each => each.Query!.Name ?? each.Name).Distinct()];
        Assert.True(names.Length > 15, string.Join(' ', names));
        foreach (string page in Pages().ToList())
            foreach (string odd in OddTexts.Where(odd => odd.Length < 1000))
            {
                string value = odd == "\uD800" ? "%ED%A0%80" : Uri.EscapeDataString(odd);
                using var request = new HttpRequestMessage(HttpMethod.Get, $"{page}?{string.Join('&', names.Select(name => $"{name}={value}"))}");
                await TryAsync(request, odd, failed);
            }
        Assert.Empty(failed);
    }

    [Fact]
    public async Task Round_AddressThatClaimsThatAllWasWell_SaysOnlyWhatIsOnRecord()
    {
        string claimed = await _ada.Http.GetStringAsync("/?well=1,2,99999");
        Assert.DoesNotContain("Written down", claimed.Split("<main")[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("multipart/form-data", "")]
    [InlineData("multipart/form-data; boundary=x", "--x\r\nno head")]
    [InlineData("multipart/form-data; boundary=x", "--x\r\nContent-Disposition: form-data; name=jar\r\n\r\nseven\r\n--x--")]
    [InlineData("application/x-www-form-urlencoded", "jar=seven&%%%=&=&&")]
    [InlineData("text/plain", "jar=1")]
    [InlineData("no type at all", "jar=1")]
    public async Task FormsThatAreNone_AtEveryFormsAddress_AreNeverTheServicesFault(string type, string body)
    {
        var failed = new List<string>();
        foreach ((string method, string path) in Writes().Where(write => !write.Path.StartsWith("/api/", StringComparison.Ordinal))
            .SelectMany(OfEveryKind).Concat(Pages().Select(page => ("POST", page))))
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), path) { Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body)) };
            request.Content.Headers.TryAddWithoutValidation("Content-Type", type);
            await TryAsync(request, type, failed);
        }
        Assert.Empty(failed);
    }

    [Theory]
    [InlineData("/jars/1/seen", "seen", "-1")]
    [InlineData("/jars/1/seen", "seen", "99999999999999999999")]
    [InlineData("/jars/1/taste", "taste", "-1")]
    [InlineData("/jars/1/on", "cold", "Nowhere")]
    public async Task JarForm_AnswerThatIsNone_SaysToChooseOneOfTheButtons(string page, string form, string odd)
    {
        HttpResponseMessage answer = await _ada.SendFormAsync(page, form, ("Input.Id", Guid.CreateVersion7().ToString()), ("Input.Choice", odd));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains($"{odd} cannot be used. Choose one of the buttons.", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    /// <summary>Sends one; where a sign-in is made to wait, the clock goes on.</summary>
    private async Task TryAsync(HttpRequestMessage request, string what, List<string> failed)
    {
        Task<HttpResponseMessage> asked = _ada.Http.SendAsync(request);
        for (int turn = 0; await Task.WhenAny(asked, Task.Delay(TimeSpan.FromSeconds(3), TimeProvider.System)) != asked && turn < 10; turn++)
            _kitchen.Clock.Advance(TimeSpan.FromSeconds(16));
        HttpResponseMessage answer;
        try
        {
            answer = await asked;
        }
        catch (HttpRequestException) when (request.Content?.Headers.ContentLength > Huge.Length)
        {
            // Refused before it was read: the connection is closed over what is still on its way.
            return;
        }
        if (answer.StatusCode >= HttpStatusCode.InternalServerError)
            failed.Add($"{(int)answer.StatusCode} {request.Method} {request.RequestUri}: {what.Replace("\0", "NUL", StringComparison.Ordinal)}");
    }

    /// <summary>All odd texts in the long run, every fourth in turn in the short one.</summary>
    private IEnumerable<string> Odd()
    {
        int turn = _turn++;
        return OddTexts.Where((_, index) => Long || index % 4 == turn % 4);
    }

    private IEnumerable<(string, IEnumerable<(string, string)>)> Changes((string Name, string Value)[] fields)
    {
        yield return ("as it is", fields);
        foreach ((string name, _) in fields.Where(field => !field.Name.StartsWith('_')).DistinctBy(field => field.Name))
        {
            yield return ($"{name} is missing", fields.Where(field => field.Name != name));
            yield return ($"{name} is doubled", fields.Append((name, "another")));
            foreach (string odd in Odd())
                yield return ($"{name} is {odd[..Math.Min(20, odd.Length)]}", fields.Select(field => field.Name == name ? (name, odd) : field));
        }
        if (fields.FirstOrDefault(field => !field.Name.StartsWith('_')).Name is { } first)
            yield return ($"{first} is huge", fields.Select(field => field.Name == first ? (first, Huge) : field));
    }

    private static ByteArrayContent Encoded(IEnumerable<(string Name, string Value)> fields)
    {
        // By hand, as the library refuses to send half a pair.
        string body = string.Join('&', fields.Select(field => $"{Uri.EscapeDataString(field.Name)}={Escaped(field.Value)}"));
        var content = new ByteArrayContent(Encoding.ASCII.GetBytes(body));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/x-www-form-urlencoded");
        return content;
    }

    private static string Escaped(string value) => value switch
    {
        "\uD800" => "%ED%A0%80",
        _ when value == Huge => Huge,
        _ => Uri.EscapeDataString(value),
    };

    private static string[] FieldsOf(System.Text.Json.JsonElement body, System.Text.Json.JsonElement schemas)
    {
        System.Text.Json.JsonElement schema = body.GetProperty("content").GetProperty("application/json").GetProperty("schema");
        if (schema.TryGetProperty("oneOf", out System.Text.Json.JsonElement choices))
            schema = choices.EnumerateArray().Last();
        if (schema.TryGetProperty("$ref", out System.Text.Json.JsonElement reference))
            schema = schemas.GetProperty(reference.GetString()!.Split('/')[^1]);
        return schema.TryGetProperty("properties", out System.Text.Json.JsonElement properties)
            ? [.. properties.EnumerateObject().Select(each => each.Name)] : [];
    }

    private IEnumerable<RouteEndpoint> Endpoints() => _kitchen.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>();

    private IEnumerable<(string Method, string Path)> Writes() =>
        from endpoint in Endpoints()
        from method in endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? []
        where method is "POST" or "PUT" or "DELETE" or "PATCH"
        select (method, "/" + endpoint.RoutePattern.RawText!.TrimStart('/'));

    /// <summary>Every page, with numbers and names of things that are there.</summary>
    private IEnumerable<string> Pages() => Endpoints()
        .Where(endpoint => endpoint.Metadata.Any(each => each is Microsoft.AspNetCore.Components.Endpoints.ComponentTypeMetadata))
        .Select(endpoint => Filled("/" + endpoint.RoutePattern.RawText!.TrimStart('/'))).Append(_guest).Distinct();

    private static string Filled(string pattern) => Parameter().Replace(pattern, each =>
        each.Value.Contains("umber", StringComparison.Ordinal) ? "1" : each.Value.Contains("lug", StringComparison.Ordinal)
            || each.Value.Contains("user", StringComparison.Ordinal) ? "attic"
        : each.Value.Contains("id", StringComparison.Ordinal) || each.Value.Contains("observation", StringComparison.Ordinal)
            ? "01890000-0000-7000-8000-000000000001" : "token");

    /// <summary>A write with parameters that fit, and with some that do not.</summary>
    private static IEnumerable<(string, string)> OfEveryKind((string Method, string Path) write)
    {
        yield return (write.Method, Filled(write.Path));
        if (!write.Path.Contains('{', StringComparison.Ordinal))
            yield break;
        foreach (string odd in new[] { "-1", "99999999999999999999", "%00", "%ED%A0%80", "..%2f..", new('a', 3000) })
            yield return (write.Method, Parameter().Replace(write.Path, odd));
    }

    [GeneratedRegex(@"\{[^}]+\}")]
    private static partial Regex Parameter();

    [GeneratedRegex("<form.*?</form>", RegexOptions.Singleline)]
    private static partial Regex Forms();

    [GeneratedRegex("<form[^>]* action=\"([^\"]*)\"")]
    private static partial Regex Action();

    [GeneratedRegex("<(?:input|select|textarea|button)[^>]* name=\"([^\"]+)\"[^>]*>")]
    private static partial Regex Inputs();

    [GeneratedRegex(" value=\"([^\"]*)\"")]
    private static partial Regex ValueOf();
}
