using System.Net;
using System.Text.Json;
using FermentWatch.RunningTests;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.Tests.Api;

public sealed class CourseApiTests : IAsyncLifetime
{
    private RunningKitchen _kitchen = null!;
    private Script _script = null!;

    /// <summary>A jar of nine days on the counter, where it is 20 degrees by night and 22 by day, moved to the cellar four days ago.</summary>
    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _script = await Script.SignedInAsync(_kitchen);
        await _script.PutUpAsync(("packed_at", Date(-9)));
        Guid counter = (await _kitchen.Services.GetRequiredService<FermentWatch.Acts.Households.ReadyPlaces>().MakeAsync(default))
            .First(place => place.Name == "kitchen counter").Id;
        await _kitchen.AddSensorAsync("shelf", counter, 10, day => 21 + Math.Sin(day * Math.Tau));
        (await _script.PostAsync("/api/v1/jars/1/ph", new { ph = "4.4", method = "meter", checked_in_buffer = true })).EnsureSuccessStatusCode();
        (await _script.PostAsync("/api/v1/jars/1/place", new { place = "cellar", at = Date(-4) })).EnsureSuccessStatusCode();
        await _kitchen.SettleAsync();
    }

    public async Task DisposeAsync()
    {
        _script.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task Course_OfAKeptJar_HoldsWhatWasMeasuredExpectedAndEntered()
    {
        JsonElement course = await _script.GetAsync("/api/v1/jars/1/course");
        JsonElement expected = course.GetProperty("expected"), entries = course.GetProperty("entries");

        JsonElement ph = entries.EnumerateArray().Single(entry => entry.GetProperty("kind").GetString() == "Ph");
        Assert.Equal((4.4, "meter"), (ph.GetProperty("ph").GetDouble(), ph.GetProperty("method").GetString()));
        Assert.Equal("moved to cellar", entries.EnumerateArray().Single(entry => entry.GetProperty("kind").GetString() == "Move")
            .GetProperty("words").GetString());
        Assert.All(Rows(expected, "ph_p10", "ph_p50", "ph_p90"), row => Assert.True(row[0] <= row[1] && row[1] <= row[2], string.Join(' ', row)));
        Assert.All(Rows(expected, "low_celsius", "high_celsius"), row => Assert.True(row[0] <= row[1], string.Join(' ', row)));
        Instant moved = _kitchen.Now - Duration.FromDays(4);
        Assert.All(course.GetProperty("temperature").GetProperty("at").EnumerateArray(), at =>
            Assert.True(InstantPattern.ExtendedIso.Parse(at.GetString()!).Value < moved + Duration.FromDays(1), $"{at} is after the move"));
        Assert.Equal(4.6, course.GetProperty("acid_line_ph").GetDouble());
        Assert.Matches(@"^It ends a few days after the days that matter; the forecast goes on to \d+ December 2026\.$",
            course.GetProperty("ends_because").GetString()!);
    }

    /// <summary>By half days the course is warm and cold in turn; what is drawn of it must not go up and down with that.</summary>
    [Fact]
    public async Task Course_ExpectedTemperature_IsABandAndNoSaw()
    {
        JsonElement expected = (await _script.GetAsync("/api/v1/jars/1/course")).GetProperty("expected");
        double[] high = [.. expected.GetProperty("high_celsius").EnumerateArray().Select(each => each.GetDouble())];
        // Of the week on the counter: the band keeps near 22 and does not fall to the nights.
        Assert.All(high[2..9], warmest => Assert.InRange(warmest, 20.9, 22.5));
    }

    [Fact]
    public async Task Course_OfAJarThatEnded_EndsThereAndSaysSo()
    {
        (await _script.PostAsync("/api/v1/round/today/stage", new { jar = 1, what = "Finished" })).EnsureSuccessStatusCode();
        _kitchen.Clock.Advance(TimeSpan.FromDays(3));
        JsonElement course = await _script.GetAsync("/api/v1/jars/1/course");

        Assert.Empty(course.GetProperty("expected").GetProperty("at").EnumerateArray());
        Assert.StartsWith("It ends where the jar did.", course.GetProperty("ends_because").GetString(), StringComparison.Ordinal);
        Assert.True(InstantPattern.ExtendedIso.Parse(course.GetProperty("shown_until").GetString()!).Value < _kitchen.Now - Duration.FromDays(2));
    }

    [Fact]
    public async Task Course_AsCsv_IsALineForEachThingByTime()
    {
        string[] lines = (await _script.Http.GetStringAsync("/api/v1/jars/1/course?format=csv")).TrimEnd('\n').Split('\n');
        Assert.Equal("at,what,unit,value,low,high,words", lines[0]);
        Assert.Equal(lines[1..].Select(line => line.Split(',')[0]).Order(StringComparer.Ordinal), lines[1..].Select(line => line.Split(',')[0]));
        Assert.Contains(lines, line => line.EndsWith(",measured,ph,4.4,,,\"pH 4.4 by meter, checked in buffer\"", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.Contains(",expected,ph,", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Course_OfNoJar_IsNotThere() =>
        Assert.Equal(HttpStatusCode.NotFound, (await _script.Http.GetAsync("/api/v1/jars/77/course")).StatusCode);

    [Theory]
    [InlineData("/jars/1", true)]
    [InlineData("/jars/1/beside", true)]
    [InlineData("/history", true)]
    [InlineData("/", false)]
    [InlineData("/jars", false)]
    [InlineData("/jars/1/ph", false)]
    [InlineData("/sensors", false)]
    public async Task Page_LetsOurScriptRun_OnlyWherePicturesAre(string path, bool mayRun)
    {
        HttpResponseMessage answer = await _script.Http.GetAsync(path);
        string policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Equal(mayRun, policy.Contains("script-src 'self'; connect-src 'self'", StringComparison.Ordinal));
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal(mayRun && path != "/history" && !path.EndsWith("beside", StringComparison.Ordinal), (await answer.Content.ReadAsStringAsync())
            .Contains("pictures.js?v=", StringComparison.Ordinal));
    }

    private static IEnumerable<double[]> Rows(JsonElement columns, params string[] names)
    {
        double[][] read = [.. names.Select(name => columns.GetProperty(name).EnumerateArray().Select(each => each.GetDouble()).ToArray())];
        Assert.True(read[0].Length > 10, $"{read[0].Length} points");
        return Enumerable.Range(0, read[0].Length).Select(row => read.Select(column => column[row]).ToArray());
    }

    private string Date(int days) => LocalDatePattern.Iso.Format((_kitchen.Now + Duration.FromDays(days)).InUtc().Date);
}
