using System.Runtime.CompilerServices;
using System.Text.Json;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

/// <summary>
/// The description of the API as it stands in openapi/v1.json, for whoever writes against it: what changes there is read before it lands.
/// FERMENTWATCH_APPROVE=1 writes it anew.
/// </summary>
public sealed class ApiDescriptionTests : IAsyncLifetime
{
    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private RunningKitchen _kitchen = null!;
    private JsonElement _described;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(_kitchen);
        _described = await ada.GetAsync("/openapi/v1.json");
    }

    public async Task DisposeAsync() => await _kitchen.DisposeAsync();

    [Fact]
    public void Description_IsTheOneThatIsCommitted()
    {
        string path = Committed(), now = JsonSerializer.Serialize(_described, Indented).ReplaceLineEndings("\n") + "\n";
        if (Environment.GetEnvironmentVariable("FERMENTWATCH_APPROVE") == "1")
            File.WriteAllText(path, now);
        Assert.Equal(File.ReadAllText(path), now);
    }

    [Fact]
    public void EveryCall_HasANameOfItsOwnAWordAndAGroup()
    {
        JsonElement[] calls = [.. _described.GetProperty("paths").EnumerateObject().SelectMany(path => path.Value.EnumerateObject())
            .Select(operation => operation.Value)];
        Assert.All(calls, call => Assert.NotEmpty(call.GetProperty("summary").GetString()!));
        Assert.All(calls, call => Assert.Single(call.GetProperty("tags").EnumerateArray()));
        string[] names = [.. calls.Select(call => call.GetProperty("operationId").GetString()!)];
        Assert.All(names, name => Assert.Matches("^(get|post|put|delete)[A-Z][A-Za-z]+$", name));
        Assert.Equal(names.Length, names.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    [Fact]
    public void Description_SaysHowOneSignsInAndWhichCallsNeedNone()
    {
        JsonElement ways = _described.GetProperty("components").GetProperty("securitySchemes");
        Assert.Equal("bearer", ways.GetProperty("key").GetProperty("scheme").GetString());
        Assert.Equal("fermentwatch", ways.GetProperty("cookie").GetProperty("name").GetString());
        Assert.Equal("""[{"key":[]},{"cookie":[]}]""", _described.GetProperty("security").GetRawText().Replace(" ", "", StringComparison.Ordinal)
            .ReplaceLineEndings(""));
        string[] open = [.. from path in _described.GetProperty("paths").EnumerateObject()
                            from operation in path.Value.EnumerateObject()
                            where operation.Value.TryGetProperty("security", out JsonElement none) && none.GetArrayLength() == 0
                            select $"{operation.Name} {path.Name}"];
        Assert.Equal(["post /api/v1/sign-in", "post /api/v1/answers/{token}"], open);
    }

    [Theory]
    [InlineData("/openapi/v1.json", "gzip", "gzip")]
    [InlineData("/openapi/v1.json", "gzip, br", "br")]
    [InlineData("/openapi/v1.json", "", null)]
    [InlineData("/household", "gzip, br", null)]
    public async Task Answer_OfTheApi_IsPackedAsIsAskedForAndAPageIsNot(string path, string asked, string? packed)
    {
        using Script ada = await Script.SignedInAsync(_kitchen, "Mo", "Mo");
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.TryAddWithoutValidation("Accept-Encoding", asked);
        using HttpResponseMessage answer = await ada.Http.SendAsync(request);
        Assert.Equal(packed, answer.Content.Headers.ContentEncoding.SingleOrDefault());
        Assert.InRange((await answer.Content.ReadAsByteArrayAsync()).Length, 1, packed is null ? int.MaxValue : 40_000);
    }

    private static string Committed([CallerFilePath] string thisFile = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(thisFile)!, "../../../openapi/v1.json"));
}
