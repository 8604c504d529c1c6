using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

public partial class DoorTests
{
    [Fact]
    public async Task Stranger_AnyApiAddress_Gets401AsProblemAndAnyPageTheSignIn()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script stranger = Script.Stranger(kitchen);
        foreach (string path in new[] { "/api/v1/jars", "/api/v1/household", "/api/v1/sensors", "/openapi/v1.json", "/api/v1/nothing" })
        {
            HttpResponseMessage answer = await stranger.Http.GetAsync(path);
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        }
        foreach (string path in new[] { "/", "/jars", "/jars/1", "/jars/1/ph", "/put-up", "/sensors", "/household", "/nothing" })
            Assert.StartsWith("/sign-in", (await stranger.Http.GetAsync(path)).Headers.Location!.PathAndQuery, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Live_Stranger_IsToldWithoutSignIn()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script stranger = Script.Stranger(kitchen);
        Assert.Equal(HttpStatusCode.OK, (await stranger.Http.GetAsync("/healthz/live")).StatusCode);
    }

    [Fact]
    public async Task EveryAnswer_PageStyleOrError_AllowsNoScriptAndNoFrame()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        foreach (string path in new[] { "/jars", "/fermentwatch.css", "/jars/99", "/api/v1/jars", "/healthz/live" })
        {
            HttpResponseMessage answer = await script.Http.GetAsync(path);
            string policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("script-src", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        }
    }

    [Fact]
    public async Task NoticesPage_OffersPush_AllowsOurOwnScriptAndNoOther()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        Assert.Equal(
            "default-src 'none'; manifest-src 'self'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'self'; frame-ancestors "
            + "'none'; script-src 'self'; worker-src 'self'; connect-src 'self'",
            (await script.Http.GetAsync("/notices")).Headers.GetValues("Content-Security-Policy").Single());
    }

    [Fact]
    public async Task KitchenWorker_Fetched_IsAScriptThatMayCallUsAndIsAskedForAgain()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script stranger = Script.Stranger(kitchen);
        HttpResponseMessage answer = await stranger.Http.GetAsync("/kitchen-worker.js");
        Assert.Equal((HttpStatusCode.OK, "text/javascript", true),
            (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType, answer.Headers.CacheControl!.NoStore));
        Assert.EndsWith("; connect-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Manifest_ToAnybody_NamesIconsThatAreThereInTheSizesItSays()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script stranger = Script.Stranger(kitchen);
        Assert.Contains("<link rel=\"manifest\" href=\"kitchen.webmanifest\"", await stranger.Http.GetStringAsync("/sign-in"),
            StringComparison.Ordinal);
        HttpResponseMessage answer = await stranger.Http.GetAsync("/kitchen.webmanifest");
        Assert.Equal((HttpStatusCode.OK, "application/manifest+json"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        JsonElement manifest = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        // Counted from the manifest itself, so that they hold under a path of their own.
        Assert.All((string[])["id", "start_url", "scope"], name => Assert.Equal("./", manifest.GetProperty(name).GetString()));
        foreach (JsonElement icon in manifest.GetProperty("icons").EnumerateArray())
        {
            byte[] png = await stranger.Http.GetByteArrayAsync("/" + icon.GetProperty("src").GetString());
            Assert.Equal("image/png", icon.GetProperty("type").GetString());
            Assert.Equal([0x89, 0x50, 0x4E, 0x47], png[..4]);
            int width = System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)),
                height = System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20));
            Assert.Equal(icon.GetProperty("sizes").GetString(), FormattableString.Invariant($"{width}x{height}"));
        }
        Assert.Equal(HttpStatusCode.OK, (await stranger.Http.GetAsync("/icon-180.png")).StatusCode);
        Assert.NotEqual(HttpStatusCode.OK, (await stranger.Http.GetAsync("/icon-9999.png")).StatusCode);
    }

    [Fact]
    public async Task FirstPage_OfTwentyJarsWithAllItBrings_IsBelow100KilobytesAndBringsNothingFromOutside()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("how_many", "20"), ("packed_at", "2026-10-01"));
        string page = await script.Http.GetStringAsync("/");
        Assert.Contains("20 jars", page, StringComparison.Ordinal);
        string[] brought = [.. Regex.Matches(page, "<(?:link|script|img)[^>]*?(?:href|src)=\"([^\"]+)\"").Select(each => each.Groups[1].Value)
            .Distinct()];
        Assert.Contains(brought, each => each.StartsWith("fermentwatch.css", StringComparison.Ordinal));
        Assert.DoesNotContain(brought, each => each.Contains("//", StringComparison.Ordinal));
        int bytes = Encoding.UTF8.GetByteCount(page);
        foreach (string address in brought)
            bytes += (await script.Http.GetByteArrayAsync("/" + address)).Length;
        Assert.InRange(bytes, 20_000, 100_000);
    }

    [Fact]
    public async Task OpenApi_EveryNumber_NamesItsUnit()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        JsonElement document = await script.GetAsync("/openapi/v1.json");
        Assert.True(document.GetProperty("paths").TryGetProperty("/api/v1/jars/{number}/ph", out _));
        var numbers = new List<string>();
        foreach (JsonProperty schema in document.GetProperty("components").GetProperty("schemas").EnumerateObject())
            if (!schema.Name.Contains("Problem", StringComparison.Ordinal) && schema.Value.TryGetProperty("properties", out JsonElement properties))
                numbers.AddRange(properties.EnumerateObject().Where(property => IsNumber(property.Value)).Select(property => property.Name));
        Assert.Contains("ph_p50", numbers);
        Assert.All(numbers, name => Assert.Matches(UnitInName(), name));
    }

    private static bool IsNumber(JsonElement schema) =>
        schema.TryGetProperty("format", out JsonElement format) && format.GetString() is "double" or "int32" or "int64";

    /// <summary>A unit, a quantity without one (pH), or a count or number of something.</summary>
    [GeneratedRegex("grams|millivolts|litres|percent|celsius|^days_|^day$|^ph($|_)|number|count|order|unit_of_quantity|^jar$|^filed$"
        + "|^attempts$|^port$|^hours_|^specific_gravity$|^degrees_", RegexOptions.IgnoreCase)]
    private static partial Regex UnitInName();
}
